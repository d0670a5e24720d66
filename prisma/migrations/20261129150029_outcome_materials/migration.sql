DROP INDEX "OutcomeIndex_recipe_idx";

DROP INDEX "OutcomeIndex_rows_idx";

ALTER TABLE "OutcomeIndex" ADD COLUMN     "materials" TEXT[];
