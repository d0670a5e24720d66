CREATE TABLE "KeptSheet" (
    "id" UUID NOT NULL,
    "ownerKey" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "calculation" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "system" TEXT NOT NULL,
    "figures" JSONB NOT NULL,
    "recipeSlug" TEXT,
    "recipeRevision" INTEGER,
    "recipeTitle" TEXT,
    "invented" BOOLEAN NOT NULL,
    "edition" TEXT NOT NULL,
    "sums" INTEGER NOT NULL,
    "digest" TEXT NOT NULL,
    "createdAt" TIMESTAMPTZ(3) NOT NULL,
    "renamedAt" TIMESTAMPTZ(3),

    CONSTRAINT "KeptSheet_pkey" PRIMARY KEY ("id")
);

CREATE INDEX "KeptSheet_ownerKey_createdAt_id_idx" ON "KeptSheet"("ownerKey", "createdAt" DESC, "id");

-- Written by hand; listed in prisma/hand-written.ts.

ALTER TABLE "KeptSheet" ADD CONSTRAINT "KeptSheet_sane" CHECK (
  "system" IN ('metric', 'us') AND "sums" > 0 AND "address" LIKE '/%'
  AND num_nonnulls("recipeSlug", "recipeRevision", "recipeTitle") IN (0, 3)
);

-- Of a kept sheet only its owner's words change.
CREATE FUNCTION hold_kept_sheet() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF to_jsonb(NEW) - '{name,note,renamedAt}'::text[] IS DISTINCT FROM to_jsonb(OLD) - '{name,note,renamedAt}'::text[] THEN
    RAISE EXCEPTION 'what a kept sheet printed is never changed' USING ERRCODE = 'PL001';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER kept_sheet_hold BEFORE UPDATE ON "KeptSheet" FOR EACH ROW EXECUTE FUNCTION hold_kept_sheet();
ALTER TABLE "KeptSheet" ENABLE ALWAYS TRIGGER kept_sheet_hold;
