-- A policy is also for whoever is a member of its role, as the login that we connect with is of halfsplit_backup: it saw
-- every row without asking. Now only a transaction that has become that role does. Second factors, whose tables came
-- beside 20261130150000_backup_role, are backed up, too.
GRANT SELECT ON "authenticator_app", "recovery_code", "second_step" TO halfsplit_backup;
DO $$
DECLARE
  table_name text;
BEGIN
  FOR table_name IN
    SELECT relname FROM pg_class
    WHERE relnamespace = 'public'::regnamespace AND relkind = 'r' AND relname <> '_prisma_migrations'
  LOOP
    EXECUTE format('DROP POLICY IF EXISTS backed_up ON %I', table_name);
    EXECUTE format('CREATE POLICY backed_up ON %I FOR SELECT TO halfsplit_backup USING (current_user = ''halfsplit_backup'')',
      table_name);
  END LOOP;
END
$$;
