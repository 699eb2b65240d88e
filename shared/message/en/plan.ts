import type { planCodes } from '../codes/plan.ts';
import type { Sentences } from '../sentences.ts';

export const planEn: Sentences<typeof planCodes> = {
  sentences: ({ sentences }, say) => say.messages(sentences),

  watchWithMenuUp: ({ place }, say) =>
    `Put up the menu of ${say.place(place)} and watch whether it stays when the fault comes`,
  goOnWatching: () => 'Leave everything as it is and go on watching',
  clientRefuses: () => 'The client doesn’t want it.',
  secondPersonNeeded: () => 'It takes a second person.',
  notAtHand: ({ kit }, say) => `Not at hand: ${kit.map(say.message).join(', ')}.`,

  menuStays: () => 'The menu stays',
  menuVanishes: () => 'The menu is hit too',
  faultStaysAway: () => 'It stays away',
  faultComes: () => 'It comes',

  testTakes: ({ test, minutes }, say) => `${say.message(test)} (about ${say.minutesNeeded(minutes)}).`,
  menuMovesOneSuspect: ({ place, probability, otherProbability }, say) =>
    `If it stays as it is, ${say.place(place)} is at ${say.percent(probability)}; if it is hit too, at ${say.percent(otherProbability)}.`,
  menuPartsSuspects: ({ place, probability, other, otherProbability }, say) =>
    `If it stays as it is, the likeliest is ${say.place(place)} (${say.percent(probability)}); if it is hit too, ${say.place(other)} (${say.percent(otherProbability)}).`,
  faultMovesOneSuspect: ({ place, probability, otherProbability }, say) =>
    `If the fault stays away, ${say.place(place)} is at ${say.percent(probability)}; if it comes, at ${say.percent(otherProbability)}.`,
  faultPartsSuspects: ({ place, probability, other, otherProbability }, say) =>
    `If the fault stays away, the likeliest is ${say.place(place)} (${say.percent(probability)}); if it comes, ${say.place(other)} (${say.percent(otherProbability)}).`,
  quietMinutesClear: ({ minutes }, say) => `Quiet for ${say.minutesNeeded(minutes)} counts as cleared.`,
  goodLooksClear: ({ looks }, say) =>
    say.plural(
      looks,
      'One look without the fault counts as cleared.',
      `${looks} looks without the fault count as cleared.`,
    ),
  quietTriesClear: ({ tries }, say) =>
    `${tries} ${say.plural(tries, 'try', 'tries')} in a row without the fault ${say.plural(tries, 'counts', 'count')} as cleared.`,

  inPlaceAlready: () => 'It is in place already, so nothing but the rest of the watch is to be paid for.',
  gains: ({ gain }, say) => `${say.start(say.message(gain))}.`,
  nothingTouchedAndGains: ({ gain }, say) => `Nothing is touched, and ${say.message(gain)}.`,
  nothingUnpluggedAndGains: ({ gain }, say) => `Nothing is unplugged, and ${say.message(gain)}.`,
  oneAnswerSettles: ({ place, probability }, say) =>
    `one of its two answers settles it: ${say.place(place)} (${say.percent(probability)})`,
  movesOneSuspect: ({ place, up, down }, say) =>
    `it takes ${say.place(place)} to ${say.percent(up)} or down to ${say.percent(down)}`,
  partsSuspects: ({ place, other }, say) => `it parts ${say.place(place)} from ${say.place(other)}`,
  minutesToCulprit: ({ minutes }, say) =>
    `From here it takes about ${say.minutesNeeded(minutes)} to a culprit on average.`,

  culpritIs: ({ place, probability, failure, repair }, say) =>
    `It is ${say.place(place)} (${say.percent(probability)}), most likely ${say.message(failure)}. Put the suspect back, see the fault return, then ${say.message(repair)}; watch once more after the repair.`,
  // Common practice, all of them.
  repairForRate: () => 'replace it by one that is certified for the rate and no longer than needed',
  repairPlugs: () => 'clean and reseat both its plugs, and replace it if the fault comes back',
  repairCoupler: () => 'lay one cable without it, or replace it by one that passes the full rate',
  repairDirection: () => 'lay it the right way round',
  repairLinkPower: () => 'give its electronics the power that they ask for, or replace it',
  repairPortMode: () => 'set its port to the mode that the format needs',
  repairEdid: () => 'restore its EDID settings, or have it pass on the display’s EDID as it is',
  repairContentProtection: () =>
    'set its ports to the content protection that the source asks for, or replace it',
  repairFirmware: () => 'update its firmware, by the maker’s instructions and without a break in the mains',
  repairPowerOrHeat: () =>
    'see to its ventilation and power supply; leave mains wiring to a licensed electrician',
  repairProcessing: () => 'switch off the processing that does it, or restore its settings',
  repairSetting: () => 'set it as it has to be, and write that down',
  repairLatched: () => 'update its firmware, or have it repaired, since a restart helps only until next time',
  repairControlBus: () =>
    'switch the control bus off at the device that speaks out of turn, or set it so that it sends nothing that isn’t wanted',
  repairWakeOrder: () => 'have the devices woken in the order that works, each once the one before is ready',
  repairControlSystem: () => 'have the macros of the control system put right',
  repairDisturbance: () => 'keep what disturbs away from it, or on another circuit',
  repairEarthLoop: () =>
    'put an isolator into the aerial, satellite or network lead, and leave the earth itself to a licensed electrician',
  repairFiveVolt: () => 'put a switch that regenerates sync behind it, or have its output repaired',
  repairCertainContent: () => 'update its firmware, or limit its output to what passes',
  handToSecondLine: () => 'hand it to second line',

  nothingLeftToTry: ({ place, probability }, say) =>
    `Nothing is left to try here that tells the suspects apart; the likeliest is ${say.place(place)} (${say.percent(probability)}). Hand it to second line with the record.`,
  handingOnIsQuicker: ({ place, probability }, say) =>
    `What is left to try here takes more time than handing the case on; the likeliest is ${say.place(place)} (${say.percent(probability)}). Hand it to second line with the record.`,
  likeliestOutsideModel: ({ probability }, say) =>
    `It is most likely something outside the model (${say.percent(probability)}): hand the case on with what was found.`,
  planCutShort: ({ left, of }) =>
    `The chain is too large to weigh everything: this is the best of ${of - left} tests out of ${of}, those at what is suspected most.`,
  visitNeeded: () => 'Nothing that a client can safely do would tell more: it takes a visit.',
  watchForMoreFirst: ({ seen, retestMin, enough, thenRetestMin }, say) =>
    `The fault was seen only ${say.times(seen)}, so every quiet retest takes ${say.minutesNeeded(retestMin)}. Watch until it was seen ${say.times(enough)} first: at the same rate a retest then takes ${say.minutesNeeded(thenRetestMin)}.`,
};
