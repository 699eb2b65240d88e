-- A sign-in, from which all its tokens descend. Access tokens name it, so that it ends them when it ends.
CREATE TABLE "session" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "member_id" UUID NOT NULL,
  "device" TEXT NOT NULL CHECK (length("device") <= 200),
  "started_at" TIMESTAMPTZ(3) NOT NULL,
  "seen_at" TIMESTAMPTZ(3) NOT NULL,
  "ended_at" TIMESTAMPTZ(3),
  CONSTRAINT "session_pkey" PRIMARY KEY ("org_id", "id")
);
CREATE INDEX "session_org_id_member_id_idx" ON "session" ("org_id", "member_id");
ALTER TABLE "session" ADD CONSTRAINT "session_org_id_member_id_fkey" FOREIGN KEY ("org_id", "member_id")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Who is signed in stays so. The tables' owner need not be a superuser: the wall is lifted while rows of all tenants move.
ALTER TABLE "refresh_token" NO FORCE ROW LEVEL SECURITY;
INSERT INTO "session" ("org_id", "id", "member_id", "device", "started_at", "seen_at", "ended_at")
  SELECT "org_id", "family_id", "member_id", '', min("created_at"), max("created_at"),
    CASE WHEN bool_and("revoked_at" IS NOT NULL) THEN max("revoked_at") END
  FROM "refresh_token" GROUP BY "org_id", "family_id", "member_id";
ALTER TABLE "refresh_token" FORCE ROW LEVEL SECURITY;
ALTER TABLE "refresh_token" ADD CONSTRAINT "refresh_token_org_id_family_id_fkey" FOREIGN KEY ("org_id", "family_id")
  REFERENCES "session" ("org_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "session" ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY;
CREATE POLICY own_rows ON "session" TO halfsplit_request USING (org_id = tenant_org());
GRANT SELECT, INSERT, UPDATE ("seen_at", "ended_at") ON "session" TO halfsplit_request;
-- A session is ended for good.
CREATE POLICY ended_for_good ON "session" AS RESTRICTIVE FOR UPDATE TO halfsplit_request
  USING ("ended_at" IS NULL) WITH CHECK (true);

-- Tries to sign in by somebody who did not show yet who they are, so no tenant's: counted by a keyed digest of the address,
-- and of the address with the account it was tried on. An account by itself is never locked.
CREATE TABLE "sign_in_try" (
  "key" TEXT NOT NULL CHECK ("key" ~ '^[0-9a-f]{64}$'),
  "wrong" INTEGER NOT NULL,
  "free_at" TIMESTAMPTZ(3) NOT NULL,
  "seen_at" TIMESTAMPTZ(3) NOT NULL,
  CONSTRAINT "sign_in_try_pkey" PRIMARY KEY ("key")
);
CREATE INDEX "sign_in_try_seen_at_idx" ON "sign_in_try" ("seen_at");
ALTER TABLE "sign_in_try" ENABLE ROW LEVEL SECURITY, FORCE ROW LEVEL SECURITY;
CREATE POLICY before_sign_in ON "sign_in_try" TO halfsplit_lookup USING (true);
GRANT SELECT, INSERT, UPDATE ("wrong", "free_at", "seen_at"), DELETE ON "sign_in_try" TO halfsplit_lookup;

ALTER TABLE "member" DROP COLUMN "failed_sign_ins", DROP COLUMN "locked_until";

-- An open stream of changes ends with its session.
CREATE TRIGGER tell_change AFTER UPDATE OF "ended_at" ON "session"
  FOR EACH ROW EXECUTE FUNCTION tell_change('session');
