CREATE INDEX "CaseIndex_country_region_idx" ON "CaseIndex"("country", "region");

CREATE INDEX "Decision_reviewerKey_idx" ON "Decision"("reviewerKey");

CREATE INDEX "Revision_authorKey_idx" ON "Revision"("authorKey");

-- How many revisions show a picture is guessed to be many, and EXISTS would then read all revisions until it meets one;
-- counting asks the index.
CREATE OR REPLACE FUNCTION hold_photo() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' THEN
    IF OLD."erasedAt" IS NOT NULL OR (
      SELECT count(*) FROM "Revision" r
      WHERE (r."body" -> 'photos') @> jsonb_build_array(jsonb_build_object('sha256', OLD."sha256"))
    ) > 0 THEN
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
