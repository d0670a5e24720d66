ALTER TABLE "Account" ADD COLUMN     "language" TEXT NOT NULL DEFAULT 'en';
