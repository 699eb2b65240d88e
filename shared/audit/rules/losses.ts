import type { Device } from '../../contract/chain.ts';
import { type Message, message } from '../../message/index.ts';
import { type Loss, lossSentence } from '../../signal/link-budget/index.ts';
import { commonPractice, type DeviceContext, type Observation, type Rule } from './rule.ts';

/** Displays and sources answer for nothing upstream of them, and a processor is there to do so. */
const passesEdidOn: readonly Device['role'][] = ['switch', 'receiver', 'extender', 'splitter'];

export const managesEdid = ({ role, edidHandling }: Device): boolean =>
  passesEdidOn.includes(role) && edidHandling.kind !== 'passesOn';

/** An EDID that isn't the display's; where that costs something of a wanted picture, it is told here and not once more. */
export function edidManagement({ device, named, losses }: DeviceContext): Observation[] {
  if (!managesEdid(device)) return [];
  const isReplaced = device.edidHandling.kind === 'replaces';
  const what = losses.filter(isOfEdidManagement).flatMap((loss) => loss.what);
  const text =
    what.length === 0
      ? message(isReplaced ? 'edidReplaced' : 'edidLimited', { device: named })
      : message(isReplaced ? 'edidReplacedLosing' : 'edidLimitedLosing', { device: named, what });
  const severity = what.some(({ code }) => code === 'lossOfFormat') ? 'mustFix' : 'shouldFix';
  return [{ severity, text, whatToDo: message('switchEdidManagementOff'), cautions: [] }];
}

const isOfEdidManagement = ({ why }: Loss): boolean => why === 'limits' || why === 'replaces';

function pictureLoss({ chain, device, losses }: DeviceContext): Observation[] {
  return losses
    .filter((loss) => !(managesEdid(device) && isOfEdidManagement(loss)))
    .map((loss) => ({
      severity: loss.why === 'bits' ? 'note' : 'shouldFix',
      text: message('lossAtDevice', { loss: lossSentence(chain, loss) }),
      whatToDo: remedy(device, loss),
      cautions: [],
    }));
}

function remedy({ role }: Device, { why }: Loss): Message {
  switch (why) {
    case 'device':
      return role === 'display' || role === 'source'
        ? message('askForWhatIsTaken')
        : message('letDevicePass');
    case 'edid':
      return role === 'display' ? message('setInputToAdmit') : message('readEdidAtBothEnds');
    case 'limits':
    case 'replaces':
      return message('switchEdidManagementOff');
    case 'combines':
      return message('feedDisplaysAlike');
    case 'bits':
      return message('askForTenBits');
    case 'blanking':
      return message('askForLessSound');
  }
}

/** What gets lost of a wanted picture, such as its HDR, at the device where it does. */
export const lossRule: Rule<DeviceContext> = {
  id: 'picture-loss',
  source: commonPractice,
  urgentFor: ['noHdr', 'wrongColour', 'wrongRateOrResolution'],
  check: pictureLoss,
};
