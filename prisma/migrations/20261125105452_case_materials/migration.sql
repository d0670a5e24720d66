ALTER TABLE "CaseIndex" DROP COLUMN "binders",
ADD COLUMN     "materials" TEXT[];
