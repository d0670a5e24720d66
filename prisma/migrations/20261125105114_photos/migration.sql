CREATE TYPE "UploadState" AS ENUM ('receiving', 'waiting', 'ready', 'refused');

CREATE TABLE "Photo" (
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,
    "sizes" INTEGER[],
    "likeness" TEXT NOT NULL,
    "madeFrom" TEXT NOT NULL,
    "takenOn" DATE,
    "uploaders" TEXT[],
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "erasedAt" TIMESTAMPTZ(3),
    "erasedBy" TEXT,
    "eraseReason" TEXT,

    CONSTRAINT "Photo_pkey" PRIMARY KEY ("sha256")
);

CREATE TABLE "Upload" (
    "key" UUID NOT NULL,
    "uploaderKey" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "expected" TEXT,
    "keepDate" BOOLEAN NOT NULL,
    "offset" INTEGER NOT NULL DEFAULT 0,
    "pieces" TEXT[],
    "state" "UploadState" NOT NULL DEFAULT 'receiving',
    "sha256" TEXT,
    "known" BOOLEAN NOT NULL DEFAULT false,
    "fault" JSONB,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "touchedAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "Upload_pkey" PRIMARY KEY ("key")
);

CREATE TABLE "PhotoJob" (
    "uploadKey" UUID NOT NULL,
    "lease" UUID,
    "leasedUntil" TIMESTAMPTZ(3),
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "PhotoJob_pkey" PRIMARY KEY ("uploadKey")
);

CREATE INDEX "Photo_madeFrom_idx" ON "Photo"("madeFrom");

CREATE INDEX "Photo_uploaders_idx" ON "Photo" USING GIN ("uploaders");

CREATE INDEX "Upload_uploaderKey_createdAt_idx" ON "Upload"("uploaderKey", "createdAt");

CREATE INDEX "Upload_touchedAt_idx" ON "Upload"("touchedAt");

CREATE INDEX "PhotoJob_createdAt_idx" ON "PhotoJob"("createdAt");

ALTER TABLE "PhotoJob" ADD CONSTRAINT "PhotoJob_uploadKey_fkey" FOREIGN KEY ("uploadKey") REFERENCES "Upload"("key") ON DELETE CASCADE ON UPDATE CASCADE;

-- Written by hand. Every object here is listed in prisma/hand-written.ts.

ALTER TABLE "Photo" ADD CONSTRAINT "Photo_sane" CHECK (
  "sha256" ~ '^[0-9a-f]{64}$' AND "madeFrom" ~ '^[0-9a-f]{64}$' AND "likeness" ~ '^[0-9a-f]{16}$'
  AND "width" > 0 AND "height" > 0 AND "bytes" > 0 AND cardinality("uploaders") > 0
  AND num_nonnulls("erasedAt", "erasedBy", "eraseReason") IN (0, 3)
);
ALTER TABLE "Upload" ADD CONSTRAINT "Upload_sane" CHECK (
  "size" > 0 AND "offset" BETWEEN 0 AND "size" AND ("state" = 'receiving' OR "offset" = "size")
  AND ("sha256" IS NOT NULL) = ("state" = 'ready') AND ("fault" IS NOT NULL) = ("state" = 'refused')
);

-- Which revisions show a picture.
CREATE INDEX "Revision_photos" ON "Revision" USING gin (("body" -> 'photos') jsonb_path_ops);

-- A picture stays what it is. Uploaders are added, an erasure is marked once, and what no revision shows may go.
CREATE FUNCTION hold_photo() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' THEN
    IF OLD."erasedAt" IS NOT NULL OR EXISTS (
      SELECT FROM "Revision" r
      WHERE (r."body" -> 'photos') @> jsonb_build_array(jsonb_build_object('sha256', OLD."sha256"))
    ) THEN
      RAISE EXCEPTION 'a photo that a revision shows is never deleted' USING ERRCODE = 'PL001';
    END IF;
    RETURN OLD;
  END IF;
  IF to_jsonb(NEW) - '{uploaders,erasedAt,erasedBy,eraseReason}'::text[]
      IS DISTINCT FROM to_jsonb(OLD) - '{uploaders,erasedAt,erasedBy,eraseReason}'::text[]
    OR NOT NEW."uploaders" @> OLD."uploaders"
    OR (OLD."erasedAt" IS NOT NULL AND (NEW."erasedAt", NEW."erasedBy", NEW."eraseReason")
      IS DISTINCT FROM (OLD."erasedAt", OLD."erasedBy", OLD."eraseReason"))
  THEN
    RAISE EXCEPTION 'a stored photo is never changed' USING ERRCODE = 'PL001';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER photo_hold BEFORE UPDATE OR DELETE ON "Photo" FOR EACH ROW EXECUTE FUNCTION hold_photo();
CREATE TRIGGER photo_keep_all BEFORE TRUNCATE ON "Photo" FOR EACH STATEMENT EXECUTE FUNCTION refuse_rewriting_history();
ALTER TABLE "Photo" ENABLE ALWAYS TRIGGER photo_hold, ENABLE ALWAYS TRIGGER photo_keep_all;
