-- What a search finds, by index. Under row-level security an index on trigrams is of no use: LIKE is not leakproof, so the
-- wall's condition has to be asked first, of every row. The two functions here ask both at once, as a role of their own that
-- may read search texts of every tenant, and give the ids of the caller's tenant only; whoever asks reads those as themselves.
-- Where the login may not make extensions or roles, they run as the caller: they find the same, more slowly.
CREATE FUNCTION found_sites(patterns text[], most integer) RETURNS SETOF uuid
  LANGUAGE plpgsql STABLE SET search_path = public, pg_temp SET plan_cache_mode = force_custom_plan AS $$
BEGIN
  RETURN QUERY SELECT id FROM site WHERE org_id = tenant_org() AND search_text LIKE ANY (patterns) LIMIT most;
END
$$;
CREATE FUNCTION found_chains(patterns text[], most integer) RETURNS SETOF uuid
  LANGUAGE plpgsql STABLE SET search_path = public, pg_temp SET plan_cache_mode = force_custom_plan AS $$
BEGIN
  RETURN QUERY SELECT id FROM chain WHERE org_id = tenant_org() AND search_text LIKE ANY (patterns) LIMIT most;
END
$$;
REVOKE ALL ON FUNCTION found_sites, found_chains FROM PUBLIC;
GRANT EXECUTE ON FUNCTION found_sites, found_chains TO halfsplit_request;

DO $$
BEGIN
  CREATE EXTENSION IF NOT EXISTS btree_gin;
  CREATE EXTENSION IF NOT EXISTS pg_trgm;
  CREATE INDEX site_search_text_idx ON "site" USING gin ("org_id", "search_text" gin_trgm_ops);
  CREATE INDEX chain_search_text_idx ON "chain" USING gin ("org_id", "search_text" gin_trgm_ops);
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'halfsplit_search') THEN
    BEGIN
      CREATE ROLE halfsplit_search NOLOGIN;
    EXCEPTION WHEN duplicate_object OR unique_violation THEN
      NULL;
    END;
  END IF;
  GRANT USAGE ON SCHEMA public TO halfsplit_search;
  GRANT SELECT ("org_id", "id", "search_text") ON "site", "chain" TO halfsplit_search;
  CREATE POLICY searched ON "site" FOR SELECT TO halfsplit_search USING (true);
  CREATE POLICY searched ON "chain" FOR SELECT TO halfsplit_search USING (true);
  -- To give it something, one has to be a member of it, and it has to be allowed to make things: both for this moment only.
  GRANT CREATE ON SCHEMA public TO halfsplit_search;
  EXECUTE format('GRANT halfsplit_search TO %I', session_user);
  ALTER FUNCTION found_sites(text[], integer) SECURITY DEFINER;
  ALTER FUNCTION found_chains(text[], integer) SECURITY DEFINER;
  ALTER FUNCTION found_sites(text[], integer) OWNER TO halfsplit_search;
  ALTER FUNCTION found_chains(text[], integer) OWNER TO halfsplit_search;
  EXECUTE format('REVOKE halfsplit_search FROM %I', session_user);
  REVOKE CREATE ON SCHEMA public FROM halfsplit_search;
EXCEPTION WHEN insufficient_privilege OR undefined_file OR feature_not_supported THEN
  RAISE NOTICE 'search stays without an index: %', SQLERRM;
END
$$;

-- A list filtered by one of these, newest first, reads as many rows as it shows.
CREATE INDEX "ticket_org_id_symptom_number_idx" ON "ticket" ("org_id", "symptom", "number");
CREATE INDEX "ticket_org_id_priority_number_idx" ON "ticket" ("org_id", "priority", "number");
CREATE INDEX "ticket_org_id_assignee_id_number_idx" ON "ticket" ("org_id", "assignee_id", "number");
-- By when it was last written to nobody asks for tickets, and an index on it is written to with every event.
DROP INDEX "ticket_org_id_state_updated_at_idx";
CREATE INDEX "ticket_org_id_state_number_idx" ON "ticket" ("org_id", "state", "number");
-- What is with second line, and what is open: few of many.
CREATE INDEX "ticket_with_second_line" ON "ticket" ("org_id", "number") WHERE "state" LIKE 'escalated%';
CREATE INDEX "ticket_open" ON "ticket" ("org_id", "number") WHERE "state" <> 'closed';
