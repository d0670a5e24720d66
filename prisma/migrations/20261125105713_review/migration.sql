ALTER TYPE "Outcome" ADD VALUE 'approve';
ALTER TYPE "Outcome" ADD VALUE 'dispute';
ALTER TYPE "Outcome" ADD VALUE 'settle';
ALTER TYPE "Outcome" ADD VALUE 'uphold';
ALTER TYPE "Outcome" ADD VALUE 'answer';
ALTER TYPE "Outcome" ADD VALUE 'strike';

ALTER TABLE "Decision" ADD COLUMN     "particulars" JSONB;

ALTER TABLE "RecipeIndex" ADD COLUMN     "disputed" BOOLEAN NOT NULL DEFAULT false;

CREATE TABLE "Claim" (
    "revisionId" UUID NOT NULL,
    "reviewerKey" TEXT NOT NULL,
    "until" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Claim_pkey" PRIMARY KEY ("revisionId")
);

CREATE TABLE "Notice" (
    "id" UUID NOT NULL,
    "forKey" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "entryId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "readAt" TIMESTAMPTZ(3),
    "mailedAt" TIMESTAMPTZ(3),
    "lease" TIMESTAMPTZ(3),

    CONSTRAINT "Notice_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Reminder" (
    "id" UUID NOT NULL,
    "ownerKey" TEXT NOT NULL,
    "caseEntryId" UUID NOT NULL,
    "work" TEXT NOT NULL,
    "dueOn" DATE NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "mailedAt" TIMESTAMPTZ(3),
    "lease" TIMESTAMPTZ(3),

    CONSTRAINT "Reminder_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "Calendar" (
    "ownerKey" TEXT NOT NULL,
    "token" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Calendar_pkey" PRIMARY KEY ("ownerKey")
);

CREATE INDEX "Claim_reviewerKey_idx" ON "Claim"("reviewerKey");

CREATE INDEX "Notice_forKey_at_id_idx" ON "Notice"("forKey", "at" DESC, "id");

CREATE INDEX "Notice_mailedAt_at_idx" ON "Notice"("mailedAt", "at");

CREATE UNIQUE INDEX "Notice_forKey_what_entryId_number_key" ON "Notice"("forKey", "what", "entryId", "number");

CREATE INDEX "Reminder_ownerKey_dueOn_id_idx" ON "Reminder"("ownerKey", "dueOn", "id");

CREATE INDEX "Reminder_mailedAt_dueOn_idx" ON "Reminder"("mailedAt", "dueOn");

CREATE UNIQUE INDEX "Reminder_ownerKey_caseEntryId_work_dueOn_key" ON "Reminder"("ownerKey", "caseEntryId", "work", "dueOn");

CREATE UNIQUE INDEX "Calendar_token_key" ON "Calendar"("token");

CREATE INDEX "Decision_outcome_at_id_idx" ON "Decision"("outcome", "at", "id");

-- Written by hand: what waits for a reviewer, oldest first. Listed in prisma/hand-written.ts.
CREATE INDEX revision_waiting ON "Revision" ("createdAt", id) WHERE state = 'submitted';
