-- What a member shows beside the password. The key of an authenticator app (RFC 6238) is sealed by the server.
CREATE TABLE "authenticator_app" (
  "org_id" UUID NOT NULL,
  "member_id" UUID NOT NULL,
  "sealed_key" TEXT NOT NULL,
  "last_step" BIGINT NOT NULL,
  "added_at" TIMESTAMPTZ(3) NOT NULL,
  "used_at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "authenticator_app_pkey" PRIMARY KEY ("org_id", "member_id")
);
ALTER TABLE "authenticator_app" ADD CONSTRAINT "authenticator_app_org_id_member_id_fkey"
  FOREIGN KEY ("org_id", "member_id") REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Codes for the day on which the phone is lost, each good once: their SHA-256, since each has 120 random bits.
CREATE TABLE "recovery_code" (
  "org_id" UUID NOT NULL,
  "member_id" UUID NOT NULL,
  "code_hash" TEXT NOT NULL,
  CONSTRAINT "recovery_code_pkey" PRIMARY KEY ("org_id", "member_id", "code_hash")
);
ALTER TABLE "recovery_code" ADD CONSTRAINT "recovery_code_org_id_member_id_fkey"
  FOREIGN KEY ("org_id", "member_id") REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A sign-in whose password was right and whose second factor is still to come.
CREATE TABLE "second_step" (
  "org_id" UUID NOT NULL,
  "token_hash" TEXT NOT NULL,
  "member_id" UUID NOT NULL,
  "expires_at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "second_step_pkey" PRIMARY KEY ("org_id", "token_hash")
);
CREATE INDEX "second_step_org_id_member_id_idx" ON "second_step" ("org_id", "member_id");
ALTER TABLE "second_step" ADD CONSTRAINT "second_step_org_id_member_id_fkey"
  FOREIGN KEY ("org_id", "member_id") REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

DO $$
DECLARE
  table_name text;
BEGIN
  FOREACH table_name IN ARRAY ARRAY['authenticator_app', 'recovery_code', 'second_step'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY', table_name);
    EXECUTE format('CREATE POLICY own_rows ON %I TO halfsplit_request USING (org_id = tenant_org())', table_name);
  END LOOP;
END
$$;
GRANT SELECT, INSERT, UPDATE ("last_step", "used_at"), DELETE ON "authenticator_app" TO halfsplit_request;
GRANT SELECT, INSERT, DELETE ON "recovery_code" TO halfsplit_request;
GRANT SELECT, INSERT, DELETE ON "second_step" TO halfsplit_request;

-- Whether a second factor was shown in this sign-in.
ALTER TABLE "session" ADD COLUMN "second_factor" BOOLEAN NOT NULL DEFAULT false;
GRANT UPDATE ("second_factor") ON "session" TO halfsplit_request;
