-- Who did what: sign-ins, grants, exports and what admins do, by the ids of members and nothing else of persons. A request
-- adds to it and can neither change an entry nor take one away before it is 90 days old, which is the least that an
-- organisation may have it kept.
CREATE TABLE "audit_entry" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "at" TIMESTAMPTZ(3) NOT NULL,
  "kind" TEXT NOT NULL,
  "actor_id" UUID,
  "member_id" UUID,
  "about_id" UUID,
  "detail" TEXT,
  CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("org_id", "id")
);
CREATE INDEX "audit_entry_org_id_at_id_idx" ON "audit_entry" ("org_id", "at", "id");
CREATE INDEX "audit_entry_org_id_actor_id_at_idx" ON "audit_entry" ("org_id", "actor_id", "at");
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_org_id_fkey"
  FOREIGN KEY ("org_id") REFERENCES "organisation" ("org_id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_org_id_actor_id_fkey"
  FOREIGN KEY ("org_id", "actor_id") REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_org_id_member_id_fkey"
  FOREIGN KEY ("org_id", "member_id") REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "audit_entry" ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY;
CREATE POLICY own_rows ON "audit_entry" FOR SELECT TO halfsplit_request USING (org_id = tenant_org());
CREATE POLICY own_additions ON "audit_entry" FOR INSERT TO halfsplit_request WITH CHECK (org_id = tenant_org());
CREATE POLICY own_old_rows ON "audit_entry" FOR DELETE TO halfsplit_request
  USING (org_id = tenant_org() AND "at" < now() - interval '90 days');
GRANT SELECT, INSERT, DELETE ON "audit_entry" TO halfsplit_request;

GRANT SELECT ON "audit_entry" TO halfsplit_backup;
CREATE POLICY backed_up ON "audit_entry" FOR SELECT TO halfsplit_backup USING (current_user = 'halfsplit_backup');
