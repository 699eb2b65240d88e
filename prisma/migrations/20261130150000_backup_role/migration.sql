-- What a backup reads as: every row of every table, and writes none. A role of its own, since the tables' owner need be no
-- superuser and sees, behind the forced wall, nothing itself. Made as 20261125080000_roles makes the others.
DO $$
DECLARE
  role_before text := current_setting('role');
  table_name text;
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'halfsplit_backup') THEN
    BEGIN
      CREATE ROLE halfsplit_backup NOLOGIN;
    EXCEPTION WHEN duplicate_object OR unique_violation THEN
      NULL;
    END;
  END IF;
  BEGIN
    PERFORM set_config('role', 'halfsplit_backup', true);
    PERFORM set_config('role', role_before, true);
  EXCEPTION WHEN insufficient_privilege THEN
    BEGIN
      EXECUTE format('GRANT halfsplit_backup TO %I', session_user);
    EXCEPTION WHEN unique_violation THEN
      NULL;
    END;
  END;

  FOR table_name IN
    SELECT relname FROM pg_class
    WHERE relnamespace = 'public'::regnamespace AND relkind = 'r' AND relname <> '_prisma_migrations'
  LOOP
    EXECUTE format('CREATE POLICY backed_up ON %I FOR SELECT TO halfsplit_backup USING (true)', table_name);
    EXECUTE format('GRANT SELECT ON %I TO halfsplit_backup', table_name);
  END LOOP;
END
$$;

GRANT USAGE ON SCHEMA public TO halfsplit_backup;
