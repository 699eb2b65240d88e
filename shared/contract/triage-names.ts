// Lists that the triage machine and the screens need at run time. They stand apart from the schemas made of them, so that
// a phone which runs the machine does not load the schema library first.

/** What is said to an occurrence that a log shows and that is none; `open` takes the “no” back. */
export const loggedAnswers = ['no', 'open'] as const;

/** What may be done to a chain on purpose. What each needs, risks and applies to is computed, see state-machines/. */
export const changeKinds = [
  'reseat',
  'flexCable',
  'replaceCable',
  'temporaryCable',
  'removeCoupler',
  'otherSource',
  'otherTitle',
  'otherApplication',
  'otherOutputSetting',
  'lowerRate',
  'raiseRate',
  'sourceIntoProcessor',
  'bypassDevice',
  'unplugBranch',
  'movePort',
  'raisePortMode',
  'disableProcessing',
  'limitInputBandwidth',
  'limitOutputBandwidth',
  'reissueHotPlug',
  'powerCycle',
  'controlBusOff',
  'otherOutlet',
  'otherSupply',
  'clearVents',
  'warmByUse',
  'insertSyncSwitch',
  'moveProcessorToDisplay',
  'substituteDisplay',
  'restoreSettings',
  'mainsOffForAll',
  'otherWakeOrder',
  'ownRemotes',
  'disconnectDisturber',
  'unplugAerial',
  'unplugNetwork',
  'oneSocketCircuit',
  'ownKind',
  'otherChange',
  'updateFirmware',
] as const;

/** What an organisation's own kind of change can be made to. */
export const ownChangeTargets = ['device', 'port', 'link', 'chain'] as const;
/** How a client can do something when told by phone: by a remote control alone, by a switch within reach. */
export const clientWays = ['remoteControl', 'switch'] as const;

/** States that a ticket is worked on in, and that it comes back to when second line is done with it. */
export const workingStates = [
  'baseline',
  'reproduce',
  'locateSide',
  'substitute.ready',
  'substitute.declared',
  'substitute.applied',
  'substitute.judged',
  'culpritFound',
  'remedy',
  'verify',
] as const;

export const whatChangedKinds = [
  'cable',
  'device',
  'firmware',
  'setting',
  'move',
  'buildingWork',
  'other',
  'nothing',
  'notKnown',
] as const;

export const symptomKinds = [
  'noPicture',
  'dropOuts',
  'sparkles',
  'noHdr',
  'wrongColour',
  'wrongRateOrResolution',
  'contentProtectionMessage',
  'soundOnly',
] as const;
/** With what content it shows: any, only above some rate or resolution, only what is copy-protected. */
export const contentKinds = ['any', 'highRateOnly', 'protectedOnly'] as const;
/**
 * How a fault comes: it is there as long as one looks; when something is done or happens (`trigger`); at random; several
 * times in short succession, then long not at all (`bursts`); only once it is warm.
 */
export const patternKinds = ['always', 'trigger', 'random', 'bursts', 'warm'] as const;
/** What makes a fault come that comes on a trigger. */
export const patternTriggers = [
  'switchingOn',
  'sourceChange',
  'titleStart',
  'formatChange',
  'afterStandby',
  'cableTouched',
  'applianceSwitches',
  'other',
] as const;
/** What a fault shows with and not without. */
export const onlyWithKinds = ['source', 'title', 'application'] as const;

/**
 * `time`: for a while; `trigger`: tries of what makes the fault come; `look`: one look, in which a fault that is always
 * there is there or not.
 */
export const watchModes = ['time', 'trigger', 'look'] as const;

/** What a watch is for. */
export const watchPurposes = ['reproduce', 'side', 'retest', 'confirm', 'verify'] as const;

/** The ways on where what is left to test costs more than it may bring. */
export const choiceWays = ['goOn', 'replace', 'handOver'] as const;
/** What is heard of a repair that nothing has proven, when the client is asked. */
export const followUpOutcomes = ['held', 'cameBack', 'notReached'] as const;
/** What is said of something that was to be tried before leaving. */
export const checkAnswers = ['works', 'fails', 'notChecked'] as const;

/** What a ticket can wait for, and who has to act for it to go on. */
export const waitingKinds = ['part', 'client', 'access', 'other'] as const;
export const actingParties = ['office', 'technician', 'secondLine', 'client', 'supplier', 'other'] as const;

/** What was seen while a change was in place that nobody had declared. */
export const lateFindings = ['stayedAway', 'came', 'notKnown'] as const;

/** What the retest of a change says. */
export const verdicts = ['cleared', 'persists', 'inconclusive'] as const;

/** A change that is declared, applied or judged, and not yet put back, kept or withdrawn. */
export const openChangeStatuses = ['declared', 'applied', 'judged'] as const;
export const changeStatuses = [...openChangeStatuses, 'restored', 'kept', 'withdrawn'] as const;
