-- What somebody has to see to by a date although nobody works on the ticket, and by when. Follows from the snapshot.
ALTER TABLE "ticket" ADD COLUMN "due" JSONB, ADD COLUMN "due_by" TIMESTAMPTZ(3);
CREATE INDEX "ticket_org_id_due_by_idx" ON "ticket" ("org_id", "due_by");
GRANT UPDATE ("due", "due_by") ON "ticket" TO halfsplit_request;
