CREATE TABLE "LibraryIndex" (
    "entryId" UUID NOT NULL,
    "kind" "Kind" NOT NULL,
    "slug" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "sortTitle" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "role" TEXT,
    "like" TEXT,
    "invented" BOOLEAN NOT NULL,
    "publishedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "LibraryIndex_pkey" PRIMARY KEY ("entryId")
);

CREATE UNIQUE INDEX "LibraryIndex_slug_key" ON "LibraryIndex"("slug");

CREATE INDEX "LibraryIndex_kind_sortTitle_slug_idx" ON "LibraryIndex"("kind", "sortTitle", "slug");

CREATE INDEX "LibraryIndex_kind_like_idx" ON "LibraryIndex"("kind", "like");

-- Every server sorts these alike.
ALTER TABLE "LibraryIndex" ALTER COLUMN "slug" TYPE text COLLATE "C", ALTER COLUMN "sortTitle" TYPE text COLLATE "C";
