-- A client's diary of one ticket: whoever has its code may say that the fault came, without an account.
CREATE TABLE "diary" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "ticket_id" UUID NOT NULL,
  "code_hash" TEXT NOT NULL CHECK ("code_hash" ~ '^[0-9a-f]{64}$'),
  "opened_by" UUID NOT NULL,
  "opened_at" TIMESTAMPTZ(3) NOT NULL,
  "until" TIMESTAMPTZ(3) NOT NULL CHECK ("until" > "opened_at"),
  "closed_at" TIMESTAMPTZ(3),
  CONSTRAINT "diary_pkey" PRIMARY KEY ("org_id", "id")
);
CREATE UNIQUE INDEX "diary_code_hash_key" ON "diary" ("code_hash");
CREATE INDEX "diary_org_id_ticket_id_idx" ON "diary" ("org_id", "ticket_id");
ALTER TABLE "diary" ADD CONSTRAINT "diary_org_id_ticket_id_fkey" FOREIGN KEY ("org_id", "ticket_id")
  REFERENCES "ticket" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "diary" ADD CONSTRAINT "diary_org_id_opened_by_fkey" FOREIGN KEY ("org_id", "opened_by")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "diary" ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY;
CREATE POLICY own_rows ON "diary" TO halfsplit_request USING (org_id = tenant_org());
GRANT SELECT, INSERT, UPDATE ("closed_at") ON "diary" TO halfsplit_request;
-- A diary is closed for good.
CREATE POLICY closed_for_good ON "diary" AS RESTRICTIVE FOR UPDATE TO halfsplit_request
  USING ("closed_at" IS NULL) WITH CHECK (true);

-- Before a tenant is known: whose diary a code opens.
CREATE POLICY look_up ON "diary" FOR SELECT TO halfsplit_lookup USING (true);
GRANT SELECT ("org_id", "id", "code_hash") ON "diary" TO halfsplit_lookup;
