ALTER TABLE "SearchDocument" ADD COLUMN     "stems" TEXT NOT NULL;
