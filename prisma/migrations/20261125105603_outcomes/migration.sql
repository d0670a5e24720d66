CREATE TYPE "Fate" AS ENUM ('reached', 'watched', 'competing', 'impossible');

-- Projections are made again after this, so nothing need be made up for old rows.
DELETE FROM "VisitIndex";

ALTER TABLE "VisitIndex" ADD COLUMN     "observer" TEXT NOT NULL,
ADD COLUMN     "others" TEXT[],
ADD COLUMN     "photos" INTEGER NOT NULL;

CREATE TABLE "OutcomeIndex" (
    "caseEntryId" UUID NOT NULL,
    "work" TEXT NOT NULL,
    "use" TEXT NOT NULL,
    "recipe" TEXT,
    "family" TEXT,
    "method" TEXT,
    "rows" TEXT[],
    "mixed" TEXT NOT NULL,
    "reporter" TEXT,
    "interested" BOOLEAN NOT NULL,
    "building" INTEGER NOT NULL,
    "leftOut" TEXT,
    "baselineOn" DATE,
    "lastOn" DATE,
    "lastSeen" BOOLEAN NOT NULL,
    "watchedDays" INTEGER NOT NULL,
    "contradicted" BOOLEAN NOT NULL,
    "unitFate" "Fate",
    "unitFrom" INTEGER,
    "unitTo" INTEGER,
    "jointFate" "Fate",
    "jointFrom" INTEGER,
    "jointTo" INTEGER,
    "lossFate" "Fate",
    "lossDamaged" BOOLEAN,
    "lossFrom" INTEGER,
    "lossTo" INTEGER,
    "endHow" TEXT,
    "endFrom" INTEGER,
    "endTo" INTEGER,
    "at0" SMALLINT,
    "at1" SMALLINT,
    "at2" SMALLINT,
    "at5" SMALLINT,
    "at10" SMALLINT,
    "at20" SMALLINT,

    CONSTRAINT "OutcomeIndex_pkey" PRIMARY KEY ("caseEntryId","work")
);

CREATE INDEX "OutcomeIndex_recipe_idx" ON "OutcomeIndex"("recipe");

-- Few visits were read by more than one person.
CREATE INDEX "VisitIndex_others" ON "VisitIndex" ("caseEntryId", work) WHERE cardinality(others) > 0;
