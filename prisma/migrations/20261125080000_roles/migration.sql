-- What requests, look-ups and provisioning run as; see 20261125080200_wall for what each may do.
-- Roles belong to the whole cluster, so another database's migration may be making or granting them at this moment, and
-- an administrator may have made them beforehand. The login role must be able to switch to them.
DO $$
DECLARE
  role_name text;
  role_before text := current_setting('role');
BEGIN
  FOREACH role_name IN ARRAY ARRAY['halfsplit_request', 'halfsplit_lookup', 'halfsplit_provision'] LOOP
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = role_name) THEN
      BEGIN
        EXECUTE format('CREATE ROLE %I NOLOGIN', role_name);
      EXCEPTION WHEN duplicate_object OR unique_violation THEN
        NULL;
      END;
    END IF;
    BEGIN
      PERFORM set_config('role', role_name, true);
      PERFORM set_config('role', role_before, true);
    EXCEPTION WHEN insufficient_privilege THEN
      BEGIN
        EXECUTE format('GRANT %I TO %I', role_name, session_user);
      EXCEPTION WHEN unique_violation THEN
        NULL;
      END;
    END;
  END LOOP;
END
$$;
