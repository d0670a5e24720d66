CREATE TABLE "Draft" (
    "id" UUID NOT NULL,
    "ownerKey" TEXT NOT NULL,
    "kind" "Kind" NOT NULL,
    "slug" TEXT,
    "basedOn" INTEGER,
    "adaptedFrom" TEXT,
    "typed" JSONB NOT NULL,
    "held" JSONB,
    "heldAt" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "savedAt" TIMESTAMPTZ(3) NOT NULL,
    "submittedRevisionId" UUID,

    CONSTRAINT "Draft_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "Draft_submittedRevisionId_key" ON "Draft"("submittedRevisionId");

CREATE INDEX "Draft_ownerKey_savedAt_id_idx" ON "Draft"("ownerKey", "savedAt" DESC, "id");
