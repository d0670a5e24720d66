-- Few cases are disputed, and every count of evidence leaves them out.
CREATE INDEX "CaseIndex_disputed" ON "CaseIndex" ("entryId") WHERE disputed;
