ALTER TABLE "KeptSheet" ADD COLUMN     "erasedAt" TIMESTAMPTZ(3);

-- Written by hand; listed in prisma/hand-written.ts.

-- A sheet with a recipe has its title, until that was erased.
ALTER TABLE "KeptSheet" DROP CONSTRAINT "KeptSheet_sane";
ALTER TABLE "KeptSheet" ADD CONSTRAINT "KeptSheet_sane" CHECK (
  "system" IN ('metric', 'us') AND "sums" > 0 AND "address" LIKE '/%'
  AND num_nonnulls("recipeSlug", "recipeRevision") IN (0, 2)
  AND CASE
    WHEN "recipeSlug" IS NULL THEN "recipeTitle" IS NULL AND "erasedAt" IS NULL
    ELSE "recipeTitle" IS NOT NULL OR "erasedAt" IS NOT NULL
  END
);

-- Do figures differ in nothing but words of their notices that gave way to […]?
CREATE FUNCTION with_words_struck(before jsonb, after jsonb) RETURNS boolean LANGUAGE sql IMMUTABLE AS $$
  SELECT before - 'blocks' = after - 'blocks'
    AND jsonb_array_length(before -> 'blocks') = jsonb_array_length(after -> 'blocks')
    AND NOT EXISTS (
      SELECT FROM jsonb_array_elements(before -> 'blocks') WITH ORDINALITY AS b(block, place)
      JOIN jsonb_array_elements(after -> 'blocks') WITH ORDINALITY AS a(block, place) ON a.place = b.place
      WHERE a.block <> b.block AND NOT coalesce(
        b.block ->> 'kind' = 'notice' AND a.block - 'text' = b.block - 'text'
        AND strpos(a.block ->> 'text', '[…]') > 0
        AND b.block ->> 'text' LIKE replace(regexp_replace(a.block ->> 'text', '([\\%_])', '\\\1', 'g'), '[…]', '%'),
        false
      )
    )
$$;

-- Of a kept sheet its owner's words change, and what an erased version of its recipe told is struck, once for each
-- decision to erase, with its date.
CREATE OR REPLACE FUNCTION hold_kept_sheet() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  own CONSTANT text[] := '{name,note,renamedAt}';
  told CONSTANT text[] := '{name,note,renamedAt,recipeTitle,figures,erasedAt}';
BEGIN
  IF to_jsonb(NEW) - own IS DISTINCT FROM to_jsonb(OLD) - own AND NOT coalesce(
    to_jsonb(NEW) - told = to_jsonb(OLD) - told
    AND (NEW."recipeTitle" IS NULL OR NEW."recipeTitle" = OLD."recipeTitle")
    AND with_words_struck(OLD.figures, NEW.figures)
    AND NEW."erasedAt" IS DISTINCT FROM OLD."erasedAt"
    AND EXISTS (
      SELECT FROM "Decision" d JOIN "Entry" e ON e.id = d."entryId"
      WHERE e.slug = OLD."recipeSlug" AND d.outcome = 'erase' AND d.at = NEW."erasedAt"
    ),
    false
  ) THEN
    RAISE EXCEPTION 'what a kept sheet printed is never changed' USING ERRCODE = 'PL001';
  END IF;
  RETURN NEW;
END $$;
