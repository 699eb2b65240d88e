-- What a closed ticket is found by, beside the texts of its site and chain: what it was, what was done, and the parts of the
-- chain as it was found. The database makes it of the snapshot, so that it is never other than that is, erased texts included;
-- of an open ticket it is null, so that writing one touches no index on it.
ALTER TABLE "ticket" ADD COLUMN "past_text" TEXT GENERATED ALWAYS AS (
  CASE WHEN "state" = 'closed' THEN lower(
    "number"::text
    || E'\n' || coalesce("snapshot" #>> '{context,culprit,explanation}', '')
    || E'\n' || coalesce("snapshot" #>> '{context,remedy,what}', '')
    || E'\n' || coalesce("snapshot" #>> '{context,asFound,chain,name}', '')
    || E'\n' || jsonb_path_query_array("snapshot", '$.context.asFound.chain.devices[*].name')::text
    || E'\n' || jsonb_path_query_array("snapshot", '$.context.asFound.chain.devices[*].model')::text
    || E'\n' || jsonb_path_query_array("snapshot", '$.context.asFound.chain.devices[*].serial')::text
    || E'\n' || jsonb_path_query_array("snapshot", '$.context.asFound.chain.links[*].id')::text
  ) END
) STORED;

-- Newest first, a page at a time.
CREATE INDEX "ticket_closed" ON "ticket" ("org_id", "closed_at" DESC, "number" DESC) WHERE "state" = 'closed';

-- By index and behind the wall, as found_sites and found_chains; see 20261130220000_search.
CREATE FUNCTION found_past(patterns text[], most integer) RETURNS SETOF uuid
  LANGUAGE plpgsql STABLE SET search_path = public, pg_temp SET plan_cache_mode = force_custom_plan AS $$
BEGIN
  RETURN QUERY SELECT id FROM ticket
    WHERE org_id = tenant_org() AND past_text IS NOT NULL AND past_text LIKE ANY (patterns) LIMIT most;
END
$$;
REVOKE ALL ON FUNCTION found_past FROM PUBLIC;
GRANT EXECUTE ON FUNCTION found_past TO halfsplit_request;

DO $$
BEGIN
  CREATE INDEX ticket_past_text_idx ON "ticket" USING gin ("org_id", "past_text" gin_trgm_ops)
    WHERE "past_text" IS NOT NULL;
  GRANT SELECT ("org_id", "id", "past_text") ON "ticket" TO halfsplit_search;
  CREATE POLICY searched ON "ticket" FOR SELECT TO halfsplit_search USING (true);
  GRANT CREATE ON SCHEMA public TO halfsplit_search;
  EXECUTE format('GRANT halfsplit_search TO %I', session_user);
  ALTER FUNCTION found_past(text[], integer) SECURITY DEFINER;
  ALTER FUNCTION found_past(text[], integer) OWNER TO halfsplit_search;
  EXECUTE format('REVOKE halfsplit_search FROM %I', session_user);
  REVOKE CREATE ON SCHEMA public FROM halfsplit_search;
EXCEPTION WHEN insufficient_privilege OR undefined_object THEN
  RAISE NOTICE 'search of past cases stays without an index: %', SQLERRM;
END
$$;
