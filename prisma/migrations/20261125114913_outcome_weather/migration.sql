-- Projections are made again after this, so nothing need be made up for old rows.
DELETE FROM "ProjectionState";
DELETE FROM "OutcomeIndex";

ALTER TABLE "OutcomeIndex" ADD COLUMN     "againFrom" INTEGER,
ADD COLUMN     "againTo" INTEGER,
ADD COLUMN     "dryFrom" INTEGER,
ADD COLUMN     "dryTo" INTEGER,
ADD COLUMN     "invented" BOOLEAN NOT NULL;

CREATE INDEX "OutcomeIndex_rows_idx" ON "OutcomeIndex" USING GIN ("rows");
