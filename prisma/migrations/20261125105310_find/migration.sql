-- Close spellings. The extension belongs to PostgreSQL itself and is trusted: the owner of the database may add it.
CREATE EXTENSION IF NOT EXISTS pg_trgm;

-- Projections are made again after this (`ProjectionState` has no row), so nothing need be made up for old rows.
DELETE FROM "CaseIndex";

ALTER TABLE "CaseIndex" ADD COLUMN     "binders" TEXT[],
ADD COLUMN     "disputed" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "drivingRain" TEXT NOT NULL,
ADD COLUMN     "families" TEXT[],
ADD COLUMN     "frost" TEXT NOT NULL,
ADD COLUMN     "ground" TEXT NOT NULL,
ADD COLUMN     "hasAnalysis" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "hasPhotos" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "latitude" DOUBLE PRECISION,
ADD COLUMN     "longitude" DOUBLE PRECISION,
ADD COLUMN     "methods" TEXT[],
ADD COLUMN     "pastFive" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "recipes" TEXT[],
ADD COLUMN     "rows" TEXT[],
ADD COLUMN     "salts" TEXT[],
ADD COLUMN     "secondObserver" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "structure" TEXT NOT NULL;

CREATE TABLE "SearchDocument" (
    "id" SERIAL NOT NULL,
    "entryId" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "slug" TEXT COLLATE "C" NOT NULL,
    "title" TEXT NOT NULL,
    "folded" TEXT COLLATE "C" NOT NULL,
    "summary" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "marks" TEXT[],
    "facets" TEXT NOT NULL,
    "years" DOUBLE PRECISION NOT NULL,
    "publishedAt" TIMESTAMPTZ(3) NOT NULL,
    "latitude" DOUBLE PRECISION,
    "longitude" DOUBLE PRECISION,

    CONSTRAINT "SearchDocument_pkey" PRIMARY KEY ("id")
);

CREATE TABLE "SearchPosting" (
    "lexeme" TEXT COLLATE "C" NOT NULL,
    "block" INTEGER NOT NULL,
    "ids" BYTEA NOT NULL,

    CONSTRAINT "SearchPosting_pkey" PRIMARY KEY ("lexeme","block")
);

CREATE TABLE "SearchWord" (
    "word" TEXT COLLATE "C" NOT NULL,
    "documents" INTEGER NOT NULL,

    CONSTRAINT "SearchWord_pkey" PRIMARY KEY ("word")
);

CREATE TABLE "SearchChange" (
    "number" BIGSERIAL NOT NULL,
    "entryId" UUID,

    CONSTRAINT "SearchChange_pkey" PRIMARY KEY ("number")
);

CREATE TABLE "ProjectionState" (
    "id" INTEGER NOT NULL,
    "version" INTEGER NOT NULL,

    CONSTRAINT "ProjectionState_pkey" PRIMARY KEY ("id")
);

CREATE UNIQUE INDEX "SearchDocument_entryId_key" ON "SearchDocument"("entryId");

CREATE INDEX "SearchDocument_kind_folded_idx" ON "SearchDocument"("kind", "folded");

CREATE INDEX "SearchWord_word_idx" ON "SearchWord" USING GIN ("word" gin_trgm_ops);
