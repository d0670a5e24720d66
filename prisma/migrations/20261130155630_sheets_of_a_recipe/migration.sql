-- Written by hand; listed in prisma/hand-written.ts.

-- An erasure walks the sheets of one recipe by id. Those worked from no recipe are never asked for by it.
CREATE INDEX "KeptSheet_recipe" ON "KeptSheet" ("recipeSlug", "id") WHERE "recipeSlug" IS NOT NULL;
