-- A chain is found by the labels of its cables, too: those of before get theirs from their newest version.
ALTER TABLE "chain" NO FORCE ROW LEVEL SECURITY;
ALTER TABLE "chain_version" NO FORCE ROW LEVEL SECURITY;

UPDATE "chain" AS c
SET "search_text" = c."search_text" || E'\n' || labels."text"
FROM (
  SELECT v."org_id", v."chain_id", v."version", lower(string_agg(link ->> 'id', E'\n')) AS "text"
  FROM "chain_version" AS v, jsonb_array_elements(v."document" -> 'links') AS link
  GROUP BY v."org_id", v."chain_id", v."version"
) AS labels
WHERE labels."org_id" = c."org_id" AND labels."chain_id" = c."id" AND labels."version" = c."version";

ALTER TABLE "chain_version" FORCE ROW LEVEL SECURITY;
ALTER TABLE "chain" FORCE ROW LEVEL SECURITY;
