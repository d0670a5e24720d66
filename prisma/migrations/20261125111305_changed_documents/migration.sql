ALTER TABLE "SearchChange" DROP COLUMN "entryId",
ADD COLUMN     "document" INTEGER;
