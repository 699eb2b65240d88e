-- The tables of prisma/schema.prisma, with what Prisma has no words for: checks and partial indexes.

CREATE TABLE "organisation" (
  "org_id" UUID NOT NULL,
  "handle" TEXT NOT NULL CHECK ("handle" ~ '^[a-z0-9][a-z0-9-]{1,39}$'),
  "name" TEXT NOT NULL,
  "settings" JSONB NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1 CHECK ("version" >= 1),
  "next_ticket_number" INTEGER NOT NULL DEFAULT 1 CHECK ("next_ticket_number" >= 1),
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "organisation_pkey" PRIMARY KEY ("org_id")
);

CREATE TABLE "member" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "email" TEXT NOT NULL CHECK ("email" = lower("email")),
  "name" TEXT NOT NULL,
  "role" TEXT NOT NULL CHECK ("role" IN ('dispatcher', 'technician', 'support', 'admin')),
  "active" BOOLEAN NOT NULL DEFAULT true,
  "password_hash" TEXT NOT NULL,
  "failed_sign_ins" INTEGER NOT NULL DEFAULT 0 CHECK ("failed_sign_ins" >= 0),
  "locked_until" TIMESTAMPTZ(3),
  "version" INTEGER NOT NULL DEFAULT 1 CHECK ("version" >= 1),
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "member_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "refresh_token" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "member_id" UUID NOT NULL,
  "family_id" UUID NOT NULL,
  "token_hash" TEXT NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  "expires_at" TIMESTAMPTZ(3) NOT NULL,
  "used_at" TIMESTAMPTZ(3),
  "revoked_at" TIMESTAMPTZ(3),
  CONSTRAINT "refresh_token_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "idempotency_record" (
  "org_id" UUID NOT NULL,
  "member_id" UUID NOT NULL,
  "key" TEXT NOT NULL,
  "request_hash" TEXT NOT NULL,
  "status" INTEGER CHECK ("status" BETWEEN 100 AND 599),
  "headers" JSONB,
  "body" JSONB,
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "idempotency_record_pkey" PRIMARY KEY ("org_id", "member_id", "key")
);

CREATE TABLE "firmware_level" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "model" TEXT NOT NULL,
  "minimum" TEXT NOT NULL,
  "note" TEXT NOT NULL DEFAULT '',
  "version" INTEGER NOT NULL DEFAULT 1 CHECK ("version" >= 1),
  "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "firmware_level_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "site" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "document" JSONB NOT NULL,
  "client_name" TEXT NOT NULL,
  "search_text" TEXT NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1 CHECK ("version" >= 1),
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "site_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "chain" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "site_id" UUID NOT NULL,
  "name" TEXT NOT NULL,
  "version" INTEGER NOT NULL DEFAULT 1 CHECK ("version" >= 1),
  "search_text" TEXT NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "chain_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "chain_version" (
  "org_id" UUID NOT NULL,
  "chain_id" UUID NOT NULL,
  "version" INTEGER NOT NULL CHECK ("version" >= 1),
  "document" JSONB NOT NULL,
  "changes" JSONB NOT NULL,
  "changed_by" UUID NOT NULL,
  "changed_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "chain_version_pkey" PRIMARY KEY ("org_id", "chain_id", "version")
);

CREATE TABLE "ticket" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "number" INTEGER NOT NULL CHECK ("number" >= 1),
  "site_id" UUID NOT NULL,
  "chain_id" UUID NOT NULL,
  "intake" JSONB NOT NULL,
  "symptom" TEXT NOT NULL CHECK ("symptom" IN ('noPicture', 'dropOuts', 'sparkles', 'noHdrOrWrongColour',
    'wrongRateOrResolution', 'contentProtectionMessage', 'soundOnly')),
  "priority" TEXT NOT NULL CHECK ("priority" IN ('low', 'normal', 'high', 'urgent')),
  "assignee_id" UUID,
  "visit_at" TIMESTAMPTZ(3),
  "state" TEXT NOT NULL,
  "snapshot" JSONB NOT NULL,
  "machine_version" INTEGER NOT NULL CHECK ("machine_version" >= 1),
  "sequence" INTEGER NOT NULL CHECK ("sequence" >= 1),
  "opened_at" TIMESTAMPTZ(3) NOT NULL,
  "updated_at" TIMESTAMPTZ(3) NOT NULL,
  "closed_at" TIMESTAMPTZ(3),
  CONSTRAINT "ticket_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "ticket_event" (
  "org_id" UUID NOT NULL,
  "ticket_id" UUID NOT NULL,
  "sequence" INTEGER NOT NULL CHECK ("sequence" >= 1),
  "type" TEXT NOT NULL,
  "payload" JSONB NOT NULL,
  "actor_id" UUID NOT NULL,
  "at" TIMESTAMPTZ(3) NOT NULL,
  "machine_version" INTEGER NOT NULL CHECK ("machine_version" >= 1),
  "previous_hash" TEXT NOT NULL CHECK ("previous_hash" ~ '^[0-9a-f]{64}$'),
  "hash" TEXT NOT NULL CHECK ("hash" ~ '^[0-9a-f]{64}$'),
  CONSTRAINT "ticket_event_pkey" PRIMARY KEY ("org_id", "ticket_id", "sequence")
);

CREATE TABLE "change" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "ticket_id" UUID NOT NULL,
  "chain_id" UUID NOT NULL,
  "kind" TEXT NOT NULL CHECK ("kind" IN ('reseat', 'replaceCable', 'temporaryCable', 'sourceIntoProcessor',
    'bypassDevice', 'unplugBranch', 'movePort', 'raisePortMode', 'disableProcessing', 'limitInputBandwidth',
    'limitOutputBandwidth', 'reissueHotPlug', 'insertSyncSwitch', 'moveProcessorToDisplay', 'substituteDisplay',
    'restoreSettings', 'updateFirmware')),
  "status" TEXT NOT NULL CHECK ("status" IN ('declared', 'applied', 'judged', 'restored', 'kept', 'withdrawn')),
  "opened_at" TIMESTAMPTZ(3) NOT NULL,
  "closed_at" TIMESTAMPTZ(3),
  CONSTRAINT "change_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "stored_file" (
  "org_id" UUID NOT NULL,
  "sha256" TEXT NOT NULL CHECK ("sha256" ~ '^[0-9a-f]{64}$'),
  "size_bytes" BIGINT NOT NULL CHECK ("size_bytes" >= 0),
  "media_type" TEXT NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  CONSTRAINT "stored_file_pkey" PRIMARY KEY ("org_id", "sha256")
);

CREATE TABLE "evidence" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "ticket_id" UUID NOT NULL,
  "kind" TEXT NOT NULL CHECK ("kind" IN ('photo', 'log', 'edid', 'settings', 'firmware', 'note', 'document')),
  "tie" JSONB NOT NULL,
  "description" TEXT NOT NULL DEFAULT '',
  "file_name" TEXT,
  "sha256" TEXT,
  "original_sha256" TEXT CHECK ("original_sha256" ~ '^[0-9a-f]{64}$'),
  "thumbnail_sha256" TEXT,
  "span" JSONB,
  "reading" JSONB,
  "facts" JSONB,
  "taken_at" TIMESTAMPTZ(3) NOT NULL,
  "uploaded_at" TIMESTAMPTZ(3) NOT NULL,
  "member_id" UUID NOT NULL,
  "withdrawn" JSONB,
  CONSTRAINT "evidence_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "packet" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "ticket_id" UUID NOT NULL,
  "version" INTEGER NOT NULL CHECK ("version" >= 1),
  "files" JSONB NOT NULL,
  "news" JSONB NOT NULL,
  "case_file" JSONB NOT NULL,
  "created_at" TIMESTAMPTZ(3) NOT NULL,
  "created_by" UUID NOT NULL,
  CONSTRAINT "packet_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE TABLE "packet_grant" (
  "org_id" UUID NOT NULL,
  "id" UUID NOT NULL,
  "packet_id" UUID NOT NULL,
  "grantee_org_id" UUID NOT NULL CHECK ("grantee_org_id" <> "org_id"),
  "grantee_member_id" UUID NOT NULL,
  "granted_by" UUID NOT NULL,
  "granted_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
  "revoked_at" TIMESTAMPTZ(3),
  "first_opened_at" TIMESTAMPTZ(3),
  CONSTRAINT "packet_grant_pkey" PRIMARY KEY ("org_id", "id")
);

CREATE UNIQUE INDEX "organisation_handle_key" ON "organisation" ("handle");
CREATE UNIQUE INDEX "member_org_id_email_key" ON "member" ("org_id", "email");
CREATE INDEX "member_id_idx" ON "member" ("id");
CREATE UNIQUE INDEX "refresh_token_org_id_token_hash_key" ON "refresh_token" ("org_id", "token_hash");
CREATE INDEX "refresh_token_org_id_family_id_idx" ON "refresh_token" ("org_id", "family_id");
CREATE INDEX "idempotency_record_org_id_created_at_idx" ON "idempotency_record" ("org_id", "created_at");
CREATE UNIQUE INDEX "firmware_level_org_id_model_key" ON "firmware_level" ("org_id", "model");
CREATE INDEX "site_org_id_client_name_id_idx" ON "site" ("org_id", "client_name", "id");
CREATE INDEX "chain_org_id_site_id_idx" ON "chain" ("org_id", "site_id");
CREATE UNIQUE INDEX "ticket_org_id_number_key" ON "ticket" ("org_id", "number");
CREATE INDEX "ticket_org_id_chain_id_idx" ON "ticket" ("org_id", "chain_id");
CREATE INDEX "ticket_org_id_site_id_idx" ON "ticket" ("org_id", "site_id");
CREATE INDEX "ticket_org_id_assignee_id_visit_at_idx" ON "ticket" ("org_id", "assignee_id", "visit_at");
CREATE INDEX "ticket_org_id_state_updated_at_idx" ON "ticket" ("org_id", "state", "updated_at");
CREATE INDEX "ticket_event_org_id_at_idx" ON "ticket_event" ("org_id", "at");
CREATE INDEX "change_org_id_ticket_id_idx" ON "change" ("org_id", "ticket_id");
CREATE INDEX "change_org_id_chain_id_idx" ON "change" ("org_id", "chain_id");
CREATE INDEX "evidence_org_id_ticket_id_uploaded_at_idx" ON "evidence" ("org_id", "ticket_id", "uploaded_at");
CREATE UNIQUE INDEX "packet_org_id_ticket_id_version_key" ON "packet" ("org_id", "ticket_id", "version");
CREATE INDEX "packet_grant_org_id_packet_id_idx" ON "packet_grant" ("org_id", "packet_id");
CREATE INDEX "packet_grant_grantee_org_id_grantee_member_id_idx" ON "packet_grant"
  ("grantee_org_id", "grantee_member_id");

-- One change at a time, whatever the program thinks.
CREATE UNIQUE INDEX "change_one_open_per_ticket" ON "change" ("org_id", "ticket_id")
  WHERE "status" IN ('declared', 'applied', 'judged');
CREATE UNIQUE INDEX "change_one_open_per_chain" ON "change" ("org_id", "chain_id")
  WHERE "status" IN ('declared', 'applied', 'judged');
CREATE UNIQUE INDEX "packet_grant_one_running_per_grantee" ON "packet_grant"
  ("org_id", "packet_id", "grantee_org_id", "grantee_member_id") WHERE "revoked_at" IS NULL;

ALTER TABLE "member" ADD CONSTRAINT "member_org_id_fkey" FOREIGN KEY ("org_id")
  REFERENCES "organisation" ("org_id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "refresh_token" ADD CONSTRAINT "refresh_token_org_id_member_id_fkey" FOREIGN KEY ("org_id", "member_id")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "idempotency_record" ADD CONSTRAINT "idempotency_record_org_id_member_id_fkey"
  FOREIGN KEY ("org_id", "member_id") REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "firmware_level" ADD CONSTRAINT "firmware_level_org_id_fkey" FOREIGN KEY ("org_id")
  REFERENCES "organisation" ("org_id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "site" ADD CONSTRAINT "site_org_id_fkey" FOREIGN KEY ("org_id")
  REFERENCES "organisation" ("org_id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "chain" ADD CONSTRAINT "chain_org_id_site_id_fkey" FOREIGN KEY ("org_id", "site_id")
  REFERENCES "site" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "chain_version" ADD CONSTRAINT "chain_version_org_id_chain_id_fkey" FOREIGN KEY ("org_id", "chain_id")
  REFERENCES "chain" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "chain_version" ADD CONSTRAINT "chain_version_org_id_changed_by_fkey"
  FOREIGN KEY ("org_id", "changed_by") REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ticket" ADD CONSTRAINT "ticket_org_id_site_id_fkey" FOREIGN KEY ("org_id", "site_id")
  REFERENCES "site" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ticket" ADD CONSTRAINT "ticket_org_id_chain_id_fkey" FOREIGN KEY ("org_id", "chain_id")
  REFERENCES "chain" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ticket" ADD CONSTRAINT "ticket_org_id_assignee_id_fkey" FOREIGN KEY ("org_id", "assignee_id")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ticket_event" ADD CONSTRAINT "ticket_event_org_id_ticket_id_fkey" FOREIGN KEY ("org_id", "ticket_id")
  REFERENCES "ticket" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "ticket_event" ADD CONSTRAINT "ticket_event_org_id_actor_id_fkey" FOREIGN KEY ("org_id", "actor_id")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "change" ADD CONSTRAINT "change_org_id_ticket_id_fkey" FOREIGN KEY ("org_id", "ticket_id")
  REFERENCES "ticket" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "change" ADD CONSTRAINT "change_org_id_chain_id_fkey" FOREIGN KEY ("org_id", "chain_id")
  REFERENCES "chain" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "evidence" ADD CONSTRAINT "evidence_org_id_ticket_id_fkey" FOREIGN KEY ("org_id", "ticket_id")
  REFERENCES "ticket" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "evidence" ADD CONSTRAINT "evidence_org_id_member_id_fkey" FOREIGN KEY ("org_id", "member_id")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "evidence" ADD CONSTRAINT "evidence_org_id_sha256_fkey" FOREIGN KEY ("org_id", "sha256")
  REFERENCES "stored_file" ("org_id", "sha256") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "evidence" ADD CONSTRAINT "evidence_org_id_thumbnail_sha256_fkey"
  FOREIGN KEY ("org_id", "thumbnail_sha256")
  REFERENCES "stored_file" ("org_id", "sha256") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "packet" ADD CONSTRAINT "packet_org_id_ticket_id_fkey" FOREIGN KEY ("org_id", "ticket_id")
  REFERENCES "ticket" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "packet" ADD CONSTRAINT "packet_org_id_created_by_fkey" FOREIGN KEY ("org_id", "created_by")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "packet_grant" ADD CONSTRAINT "packet_grant_org_id_packet_id_fkey" FOREIGN KEY ("org_id", "packet_id")
  REFERENCES "packet" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "packet_grant" ADD CONSTRAINT "packet_grant_org_id_granted_by_fkey" FOREIGN KEY ("org_id", "granted_by")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
ALTER TABLE "packet_grant" ADD CONSTRAINT "packet_grant_grantee_org_id_grantee_member_id_fkey"
  FOREIGN KEY ("grantee_org_id", "grantee_member_id")
  REFERENCES "member" ("org_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
