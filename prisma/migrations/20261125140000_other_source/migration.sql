-- Playing another source in place of the usual one is a change like any other.
ALTER TABLE "change" DROP CONSTRAINT "change_kind_check";
ALTER TABLE "change" ADD CONSTRAINT "change_kind_check" CHECK ("kind" IN ('reseat', 'replaceCable', 'temporaryCable',
  'otherSource', 'sourceIntoProcessor', 'bypassDevice', 'unplugBranch', 'movePort', 'raisePortMode',
  'disableProcessing', 'limitInputBandwidth', 'limitOutputBandwidth', 'reissueHotPlug', 'insertSyncSwitch',
  'moveProcessorToDisplay', 'substituteDisplay', 'restoreSettings', 'updateFirmware'));
