-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateEnum
CREATE TYPE "Kind" AS ENUM ('recipe', 'case', 'visit');

-- CreateEnum
CREATE TYPE "RevisionState" AS ENUM ('submitted', 'returned', 'declined', 'published', 'superseded', 'withdrawn');

-- CreateEnum
CREATE TYPE "Outcome" AS ENUM ('publish', 'return', 'decline', 'withdraw', 'restore');

-- CreateTable
CREATE TABLE "Entry" (
    "id" UUID NOT NULL,
    "kind" "Kind" NOT NULL,
    "slug" TEXT NOT NULL,
    "publishedRevisionId" UUID,
    "withdrawnAt" TIMESTAMPTZ(3),

    CONSTRAINT "Entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Revision" (
    "id" UUID NOT NULL,
    "entryId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "basedOn" INTEGER,
    "body" JSONB NOT NULL,
    "bodyDigest" TEXT NOT NULL,
    "shape" INTEGER NOT NULL,
    "note" TEXT NOT NULL,
    "authorKey" TEXT NOT NULL,
    "state" "RevisionState" NOT NULL DEFAULT 'submitted',
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "digest" TEXT NOT NULL,
    "key" UUID NOT NULL,

    CONSTRAINT "Revision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Decision" (
    "id" UUID NOT NULL,
    "entryId" UUID NOT NULL,
    "revisionId" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "outcome" "Outcome" NOT NULL,
    "reviewerKey" TEXT NOT NULL,
    "checklist" JSONB NOT NULL,
    "words" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "digest" TEXT NOT NULL,
    "key" UUID NOT NULL,

    CONSTRAINT "Decision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RecipeIndex" (
    "entryId" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "sortTitle" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "family" TEXT NOT NULL,
    "uses" TEXT[],
    "standing" TEXT NOT NULL,
    "invented" BOOLEAN NOT NULL,
    "publishedAt" TIMESTAMPTZ(3) NOT NULL,
    "units" TEXT[],
    "cases" INTEGER NOT NULL,
    "longestYears" DOUBLE PRECISION,

    CONSTRAINT "RecipeIndex_pkey" PRIMARY KEY ("entryId")
);

-- CreateTable
CREATE TABLE "CaseIndex" (
    "entryId" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "country" TEXT NOT NULL,
    "region" TEXT NOT NULL,
    "units" TEXT[],
    "wall" TEXT NOT NULL,
    "uses" TEXT[],
    "invented" BOOLEAN NOT NULL,
    "publishedAt" TIMESTAMPTZ(3) NOT NULL,
    "visits" INTEGER NOT NULL,
    "yearsWatched" DOUBLE PRECISION NOT NULL,
    "latestOn" DATE,
    "latestJoint" TEXT,
    "latestUnit" TEXT,
    "latestDamp" TEXT,

    CONSTRAINT "CaseIndex_pkey" PRIMARY KEY ("entryId")
);

-- CreateTable
CREATE TABLE "WorkIndex" (
    "caseEntryId" UUID NOT NULL,
    "work" TEXT NOT NULL,
    "use" TEXT NOT NULL,
    "started" TEXT NOT NULL,
    "finished" TEXT NOT NULL,
    "areaM2" DOUBLE PRECISION,
    "recipeEntryId" UUID,
    "recipeRevision" INTEGER,
    "endedHow" TEXT,
    "endedOn" TEXT,

    CONSTRAINT "WorkIndex_pkey" PRIMARY KEY ("caseEntryId","work")
);

-- CreateTable
CREATE TABLE "VisitIndex" (
    "entryId" UUID NOT NULL,
    "slug" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "caseEntryId" UUID NOT NULL,
    "work" TEXT NOT NULL,
    "on" DATE NOT NULL,
    "baseline" BOOLEAN NOT NULL,
    "joint" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "damp" TEXT NOT NULL,
    "season" TEXT NOT NULL,
    "daysSinceRain" INTEGER,
    "authorKey" TEXT NOT NULL,
    "invented" BOOLEAN NOT NULL,

    CONSTRAINT "VisitIndex_pkey" PRIMARY KEY ("entryId")
);

-- CreateTable
CREATE TABLE "Citation" (
    "entryId" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL,
    "source" TEXT,
    "locator" TEXT,
    "row" TEXT,
    "recipeEntryId" UUID,
    "recipeRevision" INTEGER,

    CONSTRAINT "Citation_pkey" PRIMARY KEY ("entryId","position")
);

-- CreateIndex
CREATE UNIQUE INDEX "Entry_slug_key" ON "Entry"("slug");

-- CreateIndex
CREATE UNIQUE INDEX "Entry_publishedRevisionId_key" ON "Entry"("publishedRevisionId");

-- CreateIndex
CREATE INDEX "Entry_kind_withdrawnAt_idx" ON "Entry"("kind", "withdrawnAt");

-- CreateIndex
CREATE UNIQUE INDEX "Revision_key_key" ON "Revision"("key");

-- CreateIndex
CREATE UNIQUE INDEX "Revision_entryId_number_key" ON "Revision"("entryId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Decision_key_key" ON "Decision"("key");

-- CreateIndex
CREATE INDEX "Decision_revisionId_idx" ON "Decision"("revisionId");

-- CreateIndex
CREATE UNIQUE INDEX "Decision_entryId_number_key" ON "Decision"("entryId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "RecipeIndex_slug_key" ON "RecipeIndex"("slug");

-- CreateIndex
CREATE INDEX "RecipeIndex_family_idx" ON "RecipeIndex"("family");

-- CreateIndex
CREATE INDEX "RecipeIndex_sortTitle_slug_idx" ON "RecipeIndex"("sortTitle", "slug");

-- CreateIndex
CREATE INDEX "RecipeIndex_uses_idx" ON "RecipeIndex" USING GIN ("uses");

-- CreateIndex
CREATE INDEX "RecipeIndex_units_idx" ON "RecipeIndex" USING GIN ("units");

-- CreateIndex
CREATE UNIQUE INDEX "CaseIndex_slug_key" ON "CaseIndex"("slug");

-- CreateIndex
CREATE INDEX "CaseIndex_yearsWatched_slug_idx" ON "CaseIndex"("yearsWatched" DESC, "slug");

-- CreateIndex
CREATE INDEX "CaseIndex_country_yearsWatched_slug_idx" ON "CaseIndex"("country", "yearsWatched" DESC, "slug");

-- CreateIndex
CREATE INDEX "CaseIndex_publishedAt_slug_idx" ON "CaseIndex"("publishedAt" DESC, "slug");

-- CreateIndex
CREATE INDEX "CaseIndex_uses_idx" ON "CaseIndex" USING GIN ("uses");

-- CreateIndex
CREATE INDEX "CaseIndex_units_idx" ON "CaseIndex" USING GIN ("units");

-- CreateIndex
CREATE INDEX "WorkIndex_recipeEntryId_idx" ON "WorkIndex"("recipeEntryId");

-- CreateIndex
CREATE UNIQUE INDEX "VisitIndex_slug_key" ON "VisitIndex"("slug");

-- CreateIndex
CREATE INDEX "VisitIndex_caseEntryId_work_on_idx" ON "VisitIndex"("caseEntryId", "work", "on");

-- CreateIndex
CREATE INDEX "Citation_source_idx" ON "Citation"("source");

-- CreateIndex
CREATE INDEX "Citation_row_idx" ON "Citation"("row");

-- CreateIndex
CREATE INDEX "Citation_recipeEntryId_idx" ON "Citation"("recipeEntryId");

-- AddForeignKey
ALTER TABLE "Entry" ADD CONSTRAINT "Entry_publishedRevisionId_fkey" FOREIGN KEY ("publishedRevisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Revision" ADD CONSTRAINT "Revision_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "Entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Decision" ADD CONSTRAINT "Decision_entryId_fkey" FOREIGN KEY ("entryId") REFERENCES "Entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Decision" ADD CONSTRAINT "Decision_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
