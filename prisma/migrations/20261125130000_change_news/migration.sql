-- Tells every listening process what a transaction changed, at the moment it commits: a notification on the channel
-- halfsplit_news. It carries ids and numbers only, never what somebody wrote. A trigger, so that no use case can forget.
CREATE FUNCTION tell_change() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  changed jsonb := to_jsonb(CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END);
BEGIN
  PERFORM pg_notify('halfsplit_news', jsonb_strip_nulls(jsonb_build_object(
    'kind', TG_ARGV[0],
    'org', changed -> 'org_id',
    'id', coalesce(changed -> 'id', changed -> 'org_id'),
    'sequence', coalesce(changed -> 'sequence', changed -> 'version'),
    'ticketId', changed -> 'ticket_id',
    'siteId', changed -> 'site_id',
    'chainId', changed -> 'chain_id',
    'packetId', changed -> 'packet_id',
    'granteeOrg', changed -> 'grantee_org_id',
    'granteeMember', changed -> 'grantee_member_id'
  ))::text);
  RETURN NULL;
END
$$;

CREATE TRIGGER tell_change AFTER INSERT OR UPDATE ON "ticket"
  FOR EACH ROW EXECUTE FUNCTION tell_change('ticket');
CREATE TRIGGER tell_change AFTER INSERT OR UPDATE ON "site"
  FOR EACH ROW EXECUTE FUNCTION tell_change('site');
CREATE TRIGGER tell_change AFTER INSERT OR UPDATE ON "chain"
  FOR EACH ROW EXECUTE FUNCTION tell_change('chain');
CREATE TRIGGER tell_change AFTER INSERT OR UPDATE ON "evidence"
  FOR EACH ROW EXECUTE FUNCTION tell_change('evidence');
CREATE TRIGGER tell_change AFTER INSERT ON "packet"
  FOR EACH ROW EXECUTE FUNCTION tell_change('packet');
CREATE TRIGGER tell_change AFTER INSERT OR UPDATE ON "packet_grant"
  FOR EACH ROW EXECUTE FUNCTION tell_change('grant');
CREATE TRIGGER tell_change AFTER INSERT OR UPDATE OF "name", "role", "active", "email" ON "member"
  FOR EACH ROW EXECUTE FUNCTION tell_change('member');
CREATE TRIGGER tell_change AFTER UPDATE OF "name", "settings" ON "organisation"
  FOR EACH ROW EXECUTE FUNCTION tell_change('organisation');
CREATE TRIGGER tell_change AFTER INSERT OR UPDATE OR DELETE ON "firmware_level"
  FOR EACH ROW EXECUTE FUNCTION tell_change('firmwareLevel');
