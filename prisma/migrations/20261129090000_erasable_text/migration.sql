-- What persons typed can be erased from a log that still verifies: what is hashed holds a salted digest of each text
-- (format 2), and the text lies beside it. What was logged before (format 1) stays as it was hashed.
ALTER TABLE "ticket_event" ADD COLUMN "format" INTEGER NOT NULL DEFAULT 1 CHECK ("format" >= 1);

CREATE TABLE "ticket_text" (
  "org_id" UUID NOT NULL,
  "ticket_id" UUID NOT NULL,
  "sequence" INTEGER NOT NULL,
  "pointer" TEXT NOT NULL,
  "salt" TEXT CHECK ("salt" ~ '^[0-9a-f]{64}$'),
  "text" TEXT NOT NULL,
  CONSTRAINT "ticket_text_pkey" PRIMARY KEY ("org_id", "ticket_id", "sequence", "pointer")
);
ALTER TABLE "ticket_text" ADD CONSTRAINT "ticket_text_org_id_ticket_id_sequence_fkey"
  FOREIGN KEY ("org_id", "ticket_id", "sequence") REFERENCES "ticket_event" ("org_id", "ticket_id", "sequence")
  ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "ticket_text" ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY;
CREATE POLICY own_rows ON "ticket_text" TO halfsplit_request USING (org_id = tenant_org());
GRANT SELECT, INSERT, UPDATE ("salt", "text") ON "ticket_text" TO halfsplit_request;
-- All that can be done to a text is to erase it, once.
CREATE POLICY erased_for_good ON "ticket_text" AS RESTRICTIVE FOR UPDATE TO halfsplit_request
  USING ("salt" IS NOT NULL) WITH CHECK ("salt" IS NULL);

-- What is kept of evidence repeats what the log says.
GRANT UPDATE ("description", "reading") ON "evidence" TO halfsplit_request;
