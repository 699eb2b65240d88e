-- The server's own signature over an event's hash, so that rights on the database alone can't rewrite a log unnoticed.
-- Null in what was written before servers signed.
ALTER TABLE "ticket_event" ADD COLUMN "signature" TEXT CHECK ("signature" ~ '^[A-Za-z0-9_-]{86}$');
