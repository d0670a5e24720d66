-- Written by hand; listed in prisma/hand-written.ts.

-- What it lets through is as before. Figures are large: turned into JSON with all else of their row, four times for every
-- sheet that an erasure reaches, they took most of its time, while all publishing waits. They are compared by themselves
-- now, and looked into only where they differ.
CREATE OR REPLACE FUNCTION hold_kept_sheet() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  own CONSTANT text[] := '{name,note,renamedAt}';
  told CONSTANT text[] := '{name,note,renamedAt,recipeTitle,erasedAt}';
  figures_stay CONSTANT boolean := NEW.figures = OLD.figures;
  was "KeptSheet" := OLD;
  becomes "KeptSheet" := NEW;
BEGIN
  was.figures := 'null';
  becomes.figures := 'null';
  IF NOT (figures_stay AND to_jsonb(becomes) - own = to_jsonb(was) - own) AND NOT coalesce(
    to_jsonb(becomes) - told = to_jsonb(was) - told
    AND (NEW."recipeTitle" IS NULL OR NEW."recipeTitle" = OLD."recipeTitle")
    AND (figures_stay OR with_words_struck(OLD.figures, NEW.figures))
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
