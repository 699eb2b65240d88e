-- Row-level security on every table, and the least that each role needs.

-- Whose transaction this is. A setting that was once made local in a session reads as '' afterwards, not as null.
CREATE FUNCTION tenant_org() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  RETURN nullif(current_setting('app.org', true), '')::uuid;
CREATE FUNCTION tenant_member() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  RETURN nullif(current_setting('app.member', true), '')::uuid;

DO $$
DECLARE
  table_name text;
BEGIN
  FOREACH table_name IN ARRAY ARRAY['organisation', 'member', 'refresh_token', 'idempotency_record', 'firmware_level',
    'site', 'chain', 'chain_version', 'ticket', 'ticket_event', 'change', 'stored_file', 'evidence', 'packet',
    'packet_grant'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY', table_name);
    EXECUTE format('CREATE POLICY own_rows ON %I TO halfsplit_request USING (org_id = tenant_org())', table_name);
  END LOOP;
END
$$;

GRANT USAGE ON SCHEMA public TO halfsplit_request, halfsplit_lookup, halfsplit_provision;

-- What a request may do to its own organisation's rows. Keys never change; ticket_event, chain_version, packet and
-- stored_file are only ever added to.
GRANT SELECT, UPDATE ("name", "settings", "version", "next_ticket_number") ON "organisation" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("email", "name", "role", "active", "password_hash", "failed_sign_ins", "locked_until",
  "version") ON "member" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("used_at", "revoked_at"), DELETE ON "refresh_token" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("status", "headers", "body"), DELETE ON "idempotency_record" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("model", "minimum", "note", "version", "updated_at"), DELETE ON "firmware_level"
  TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("document", "client_name", "search_text", "version", "updated_at") ON "site"
  TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("name", "version", "search_text") ON "chain" TO halfsplit_request;
GRANT SELECT, INSERT ON "chain_version" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("intake", "symptom", "priority", "assignee_id", "visit_at", "state", "snapshot",
  "machine_version", "sequence", "updated_at", "closed_at") ON "ticket" TO halfsplit_request;
GRANT SELECT, INSERT ON "ticket_event" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("status", "closed_at") ON "change" TO halfsplit_request;
GRANT SELECT, INSERT ON "stored_file" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("withdrawn") ON "evidence" TO halfsplit_request;
GRANT SELECT, INSERT ON "packet" TO halfsplit_request;
GRANT SELECT, INSERT, UPDATE ("revoked_at", "first_opened_at") ON "packet_grant" TO halfsplit_request;

-- A token that is still good, or that would show reuse, stays.
CREATE POLICY only_expired ON "refresh_token" AS RESTRICTIVE FOR DELETE TO halfsplit_request
  USING ("expires_at" < now());

-- A grant shows its grantee the grant and that packet until it is revoked, and lets them say once that they opened it.
CREATE POLICY revoked_for_good ON "packet_grant" AS RESTRICTIVE FOR UPDATE TO halfsplit_request
  USING ("revoked_at" IS NULL) WITH CHECK (true);
CREATE POLICY grantee_reads ON "packet_grant" FOR SELECT TO halfsplit_request
  USING ("grantee_org_id" = tenant_org() AND "grantee_member_id" = tenant_member() AND "revoked_at" IS NULL);
CREATE POLICY grantee_opens ON "packet_grant" FOR UPDATE TO halfsplit_request
  USING ("grantee_org_id" = tenant_org() AND "grantee_member_id" = tenant_member() AND "first_opened_at" IS NULL)
  WITH CHECK ("grantee_org_id" = tenant_org() AND "grantee_member_id" = tenant_member()
    AND "first_opened_at" IS NOT NULL AND "revoked_at" IS NULL);
CREATE POLICY grantee_reads ON "packet" FOR SELECT TO halfsplit_request
  USING (EXISTS (
    SELECT FROM "packet_grant" "g"
    WHERE "g"."org_id" = "packet"."org_id" AND "g"."packet_id" = "packet"."id"
      AND "g"."grantee_org_id" = tenant_org() AND "g"."grantee_member_id" = tenant_member()
      AND "g"."revoked_at" IS NULL
  ));

-- Before a tenant is known: whose handle and email this is, and whom a packet may be granted to.
CREATE POLICY look_up ON "organisation" FOR SELECT TO halfsplit_lookup USING (true);
CREATE POLICY look_up ON "member" FOR SELECT TO halfsplit_lookup USING (true);
GRANT SELECT ("org_id", "handle", "name") ON "organisation" TO halfsplit_lookup;
GRANT SELECT ("org_id", "id", "email", "name", "role", "active", "password_hash") ON "member" TO halfsplit_lookup;

-- An organisation and its first members.
CREATE POLICY provision ON "organisation" TO halfsplit_provision USING (true);
CREATE POLICY provision ON "member" TO halfsplit_provision USING (true);
GRANT SELECT, INSERT ON "organisation", "member" TO halfsplit_provision;
