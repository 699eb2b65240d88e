-- NOTIFY within a transaction makes its commit wait for every other's (PostgreSQL takes one lock for all of them), and a
-- whole row as JSON costs its snapshot's size. The triggers now note the news with their transaction, in a setting that
-- ends with it; who commits reads it, and tells it afterwards (src/database/transaction.ts). Ids and numbers only, as before.
CREATE OR REPLACE FUNCTION tell_change() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  changed record := CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
  news jsonb := jsonb_build_object('kind', TG_ARGV[0], 'org', changed.org_id);
  noted text := coalesce(current_setting('app.news', true), '');
  everything text := '{"kind": "lost"}';
BEGIN
  -- A transaction that changes more than this (assumed), as bringing a backup back does, has everybody read again instead.
  IF length(noted) > 65536 THEN
    PERFORM set_config('app.news', everything, true);
    RETURN NULL;
  ELSIF noted = everything THEN
    RETURN NULL;
  END IF;
  CASE TG_TABLE_NAME
    WHEN 'organisation' THEN news := news || jsonb_build_object('id', changed.org_id, 'sequence', changed.version);
    WHEN 'ticket' THEN news := news || jsonb_build_object('id', changed.id, 'sequence', changed.sequence,
      'siteId', changed.site_id, 'chainId', changed.chain_id);
    WHEN 'site', 'member', 'firmware_level' THEN
      news := news || jsonb_build_object('id', changed.id, 'sequence', changed.version);
    WHEN 'chain' THEN news := news || jsonb_build_object('id', changed.id, 'sequence', changed.version,
      'siteId', changed.site_id);
    WHEN 'evidence' THEN news := news || jsonb_build_object('id', changed.id, 'ticketId', changed.ticket_id);
    WHEN 'packet' THEN news := news || jsonb_build_object('id', changed.id, 'sequence', changed.version,
      'ticketId', changed.ticket_id);
    WHEN 'packet_grant' THEN news := news || jsonb_build_object('id', changed.id, 'packetId', changed.packet_id,
      'granteeOrg', changed.grantee_org_id, 'granteeMember', changed.grantee_member_id);
    WHEN 'session' THEN news := news || jsonb_build_object('id', changed.id);
  END CASE;
  PERFORM set_config('app.news', coalesce(nullif(noted, '') || ',', '') || news, true);
  RETURN NULL;
END
$$;
