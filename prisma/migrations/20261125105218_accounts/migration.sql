CREATE TYPE "Role" AS ENUM ('contributor', 'reviewer', 'steward');

ALTER TYPE "Outcome" ADD VALUE 'erase';

CREATE TABLE "Account" (
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "emailVerifiedAt" TIMESTAMPTZ(3),
    "passwordHash" TEXT,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "closedAt" TIMESTAMPTZ(3),

    CONSTRAINT "Account_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "RoleGrant" (
    "accountId" UUID NOT NULL,
    "role" "Role" NOT NULL,
    "grantedBy" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "RoleGrant_pkey" PRIMARY KEY ("accountId","role")
);

CREATE TABLE "Identity" (
    "issuer" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "accountId" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Identity_pkey" PRIMARY KEY ("issuer","subject")
);

CREATE TABLE "Session" (
    "id" UUID NOT NULL,
    "digest" TEXT NOT NULL,
    "accountId" UUID NOT NULL,
    "how" TEXT NOT NULL,
    "agent" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "seenAt" TIMESTAMPTZ(3) NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Token" (
    "digest" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "email" TEXT,
    "accountId" UUID,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Token_pkey" PRIMARY KEY ("digest")
);

CREATE TABLE "RateLimit" (
    "bucket" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "expiresAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "RateLimit_pkey" PRIMARY KEY ("bucket")
);

CREATE TABLE "Audit" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "actorKey" TEXT NOT NULL,
    "act" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "detail" JSONB NOT NULL,

    CONSTRAINT "Audit_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "ErasureMark" (
    "sha256" TEXT NOT NULL,
    "ground" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "stewardKey" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "key" UUID NOT NULL,

    CONSTRAINT "ErasureMark_pkey" PRIMARY KEY ("sha256")
);

CREATE UNIQUE INDEX "Account_key_key" ON "Account"("key");

CREATE UNIQUE INDEX "Account_email_key" ON "Account"("email");

CREATE INDEX "RoleGrant_role_idx" ON "RoleGrant"("role");

CREATE INDEX "Identity_accountId_idx" ON "Identity"("accountId");

CREATE UNIQUE INDEX "Session_digest_key" ON "Session"("digest");

CREATE INDEX "Session_accountId_idx" ON "Session"("accountId");

CREATE INDEX "Session_expiresAt_idx" ON "Session"("expiresAt");

CREATE INDEX "Token_accountId_idx" ON "Token"("accountId");

CREATE INDEX "Token_expiresAt_idx" ON "Token"("expiresAt");

CREATE INDEX "RateLimit_expiresAt_idx" ON "RateLimit"("expiresAt");

CREATE INDEX "Audit_actorKey_id_idx" ON "Audit"("actorKey", "id");

CREATE INDEX "Audit_act_id_idx" ON "Audit"("act", "id");

CREATE INDEX "Audit_subject_id_idx" ON "Audit"("subject", "id");

CREATE UNIQUE INDEX "ErasureMark_key_key" ON "ErasureMark"("key");

ALTER TABLE "RoleGrant" ADD CONSTRAINT "RoleGrant_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "Account"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "Identity" ADD CONSTRAINT "Identity_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "Account"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "Session" ADD CONSTRAINT "Session_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "Account"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

ALTER TABLE "Token" ADD CONSTRAINT "Token_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "Account"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- Written by hand; listed in prisma/hand-written.ts.

ALTER TABLE "Account" ADD CONSTRAINT "Account_sane" CHECK (
  ("email" IS NULL OR "email" = lower("email")) AND ("closedAt" IS NULL OR ("email" IS NULL AND "passwordHash" IS NULL AND "name" = ''))
);

-- A revision changes in two ways only: its state takes a lawful step, and its body is erased after the decision that
-- says so.
CREATE OR REPLACE FUNCTION hold_revision() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF to_jsonb(NEW) - 'state' - 'body' IS DISTINCT FROM to_jsonb(OLD) - 'state' - 'body' OR (
    NEW.body IS DISTINCT FROM OLD.body AND NOT (
      NEW.body = '{"erased": true}'::jsonb
      AND EXISTS (SELECT FROM "Decision" d WHERE d."revisionId" = OLD.id AND d.outcome = 'erase')
    )
  ) THEN
    RAISE EXCEPTION 'a submitted revision is never changed' USING ERRCODE = 'PL001';
  END IF;
  IF NEW.state IS DISTINCT FROM OLD.state AND (OLD.state, NEW.state) NOT IN (
    ('submitted', 'published'), ('submitted', 'returned'), ('submitted', 'declined'),
    ('published', 'superseded'), ('published', 'withdrawn'), ('withdrawn', 'published')
  ) THEN
    RAISE EXCEPTION 'a revision cannot go from % to %', OLD.state, NEW.state USING ERRCODE = 'PL001';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER audit_hold BEFORE UPDATE OR DELETE ON "Audit" FOR EACH ROW EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER audit_keep_all BEFORE TRUNCATE ON "Audit" FOR EACH STATEMENT EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER erasure_hold BEFORE UPDATE OR DELETE ON "ErasureMark" FOR EACH ROW EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER erasure_keep_all BEFORE TRUNCATE ON "ErasureMark" FOR EACH STATEMENT EXECUTE FUNCTION refuse_rewriting_history();
ALTER TABLE "Audit" ENABLE ALWAYS TRIGGER audit_hold, ENABLE ALWAYS TRIGGER audit_keep_all;
ALTER TABLE "ErasureMark" ENABLE ALWAYS TRIGGER erasure_hold, ENABLE ALWAYS TRIGGER erasure_keep_all;
