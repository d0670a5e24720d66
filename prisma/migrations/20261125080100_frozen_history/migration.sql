-- Written by hand. Every object here is listed in prisma/hand-written.ts.

-- What is sorted or paged by sorts the same on every server.
ALTER TABLE "Entry" ALTER COLUMN "slug" TYPE text COLLATE "C";
ALTER TABLE "RecipeIndex" ALTER COLUMN "slug" TYPE text COLLATE "C", ALTER COLUMN "sortTitle" TYPE text COLLATE "C";
ALTER TABLE "CaseIndex" ALTER COLUMN "slug" TYPE text COLLATE "C";
ALTER TABLE "VisitIndex" ALTER COLUMN "slug" TYPE text COLLATE "C";

ALTER TABLE "Revision" ADD CONSTRAINT "Revision_sane" CHECK (
  "number" > 0 AND "shape" > 0 AND ("basedOn" IS NULL OR "basedOn" BETWEEN 1 AND "number" - 1)
  AND "digest" ~ '^[0-9a-f]{64}$' AND "bodyDigest" ~ '^[0-9a-f]{64}$'
);
ALTER TABLE "Decision" ADD CONSTRAINT "Decision_sane" CHECK ("number" > 0 AND "digest" ~ '^[0-9a-f]{64}$');
ALTER TABLE "Citation" ADD CONSTRAINT "Citation_one_target" CHECK (num_nonnulls("source", "row", "recipeEntryId") = 1);

CREATE FUNCTION refuse_rewriting_history() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'history is never rewritten: % on "%"', TG_OP, TG_TABLE_NAME USING ERRCODE = 'PL001';
END $$;

-- A revision changes in one way only: its state takes a lawful step.
CREATE FUNCTION hold_revision() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF to_jsonb(NEW) - 'state' IS DISTINCT FROM to_jsonb(OLD) - 'state' THEN
    RAISE EXCEPTION 'a submitted revision is never changed' USING ERRCODE = 'PL001';
  END IF;
  IF NEW.state IS DISTINCT FROM OLD.state AND (OLD.state, NEW.state) NOT IN (
    ('submitted', 'published'), ('submitted', 'returned'), ('submitted', 'declined'),
    ('published', 'superseded'), ('published', 'withdrawn'), ('withdrawn', 'published')
  ) THEN
    RAISE EXCEPTION 'a revision cannot go from % to %', OLD.state, NEW.state USING ERRCODE = 'PL001';
  END IF;
  RETURN NEW;
END $$;

-- An entry keeps its address and kind, and points only at a revision of its own.
CREATE FUNCTION hold_entry() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' AND (NEW.id, NEW.kind, NEW.slug) IS DISTINCT FROM (OLD.id, OLD.kind, OLD.slug) THEN
    RAISE EXCEPTION 'an entry keeps its kind and address' USING ERRCODE = 'PL001';
  END IF;
  IF NEW."publishedRevisionId" IS NOT NULL AND NOT EXISTS (
    SELECT FROM "Revision" r WHERE r.id = NEW."publishedRevisionId" AND r."entryId" = NEW.id
  ) THEN
    RAISE EXCEPTION 'an entry publishes only its own revisions' USING ERRCODE = 'PL001';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER revision_hold BEFORE UPDATE ON "Revision" FOR EACH ROW EXECUTE FUNCTION hold_revision();
CREATE TRIGGER revision_keep BEFORE DELETE ON "Revision" FOR EACH ROW EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER revision_keep_all BEFORE TRUNCATE ON "Revision" FOR EACH STATEMENT EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER decision_hold BEFORE UPDATE OR DELETE ON "Decision" FOR EACH ROW EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER decision_keep_all BEFORE TRUNCATE ON "Decision" FOR EACH STATEMENT EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER entry_hold BEFORE INSERT OR UPDATE ON "Entry" FOR EACH ROW EXECUTE FUNCTION hold_entry();
CREATE TRIGGER entry_keep BEFORE DELETE ON "Entry" FOR EACH ROW EXECUTE FUNCTION refuse_rewriting_history();
CREATE TRIGGER entry_keep_all BEFORE TRUNCATE ON "Entry" FOR EACH STATEMENT EXECUTE FUNCTION refuse_rewriting_history();

-- ALWAYS: they fire for replication roles too, so that only ALTER TABLE can switch them off.
ALTER TABLE "Revision" ENABLE ALWAYS TRIGGER revision_hold, ENABLE ALWAYS TRIGGER revision_keep, ENABLE ALWAYS TRIGGER revision_keep_all;
ALTER TABLE "Decision" ENABLE ALWAYS TRIGGER decision_hold, ENABLE ALWAYS TRIGGER decision_keep_all;
ALTER TABLE "Entry" ENABLE ALWAYS TRIGGER entry_hold, ENABLE ALWAYS TRIGGER entry_keep, ENABLE ALWAYS TRIGGER entry_keep_all;
