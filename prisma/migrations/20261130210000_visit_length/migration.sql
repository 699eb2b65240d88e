-- How long a visit is planned for, minutes; null where nobody said.
ALTER TABLE "ticket" ADD COLUMN "visit_min" INTEGER;
GRANT UPDATE ("visit_min") ON "ticket" TO halfsplit_request;
