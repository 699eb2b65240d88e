-- Kinds of change are the contract's list, which every request is held against; a new one must not need a migration.
ALTER TABLE "change" DROP CONSTRAINT "change_kind_check";
