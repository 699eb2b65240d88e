/** What walks need not meet. The list may only shrink: a test holds how long it is. */
export const notToMeet: readonly string[] = [
  // Second line's, or a correction that whoever sees it makes unasked: never offered, and sent all the same.
  'offered takeCase',
  'offered askForMore',
  'offered directStep',
  'offered acceptCase',
  'offered handBack',
  'offered confirmOccurrence',
  'offered answerLogged',
  'offered withdrawOccurrence',
  'offered correctOccurrence',
  'offered withdrawReport',
  'offered withdrawLook',
  'offered enterLateChange',
  // Only whoever makes it knows what it is.
  'changeOffered otherChange',
  // The last of many, at what is seldom suspected: a walk that comes to them has mostly been handed over before.
  'changeOffered unplugBranch',
  'changeOffered moveProcessorToDisplay',
  'changeOffered sourceIntoProcessor',
  'changeOffered otherSupply',
  'changeOffered clearVents',
  'changeOffered warmByUse',
  'changeOffered oneSocketCircuit',
  'changeOffered disconnectDisturber',
  'changeOffered updateFirmware',
  // It takes a processor right before a display, with a way round it: few chains of the walks have one.
  'changeMade moveProcessorToDisplay',
];
export const mostNotToMeet = 23;
