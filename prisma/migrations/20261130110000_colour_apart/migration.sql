-- A picture without HDR and one in wrong colours are told apart. What was either counts as the first, which most were.
ALTER TABLE "ticket" DROP CONSTRAINT "ticket_symptom_check";
ALTER TABLE "ticket" NO FORCE ROW LEVEL SECURITY;
UPDATE "ticket" SET "symptom" = 'noHdr', "intake" = jsonb_set("intake", '{symptom,kind}', '"noHdr"')
  WHERE "symptom" = 'noHdrOrWrongColour';
ALTER TABLE "ticket" FORCE ROW LEVEL SECURITY;
ALTER TABLE "ticket" ADD CONSTRAINT "ticket_symptom_check" CHECK ("symptom" IN ('noPicture', 'dropOuts', 'sparkles',
  'noHdr', 'wrongColour', 'wrongRateOrResolution', 'contentProtectionMessage', 'soundOnly'));
