import { once } from 'node:events';
import { createWriteStream } from 'node:fs';

/** What devices talk about all day; some of it in words that events use too. */
const chatter = [
  'control: poll of output 2 answered in 11 ms',
  'netd: lease renewed for 86400 s',
  'fan: speed 1420 rpm, board 41 C, scaler 52 C',
  'audio: lip sync offset 40 ms applied on zone 1',
  'ir: code 0x20DF10EF repeated 3 times',
  'ui: menu page picture/advanced opened by remote',
  'ntp: time sync with pool, offset 3 ms',
  'osd: banner shown for 5 s, text "Input 3"',
  'hdmi-rx1: status video=3840x2160p60 colour=422 depth=12 tmds=594.0 locked=1 errors=0',
  'zone2: volume -32.5 dB, mute off, source tuner',
];
const happenings = [
  'hdmi-tx0: hot plug detect low',
  'hdmi-tx0: hot plug detect high',
  'hdmi-tx0: EDID read, 256 bytes',
  'hdmi-tx0: content protection: starting authentication',
  'hdmi-tx0: content protection authenticated',
  'hdmi-rx1: sync lost',
  'hdmi-rx1: sync found, 3840x2160p60',
  'hdmi-tx0: link training failed at 12 Gbps x 4, falling back to 8 Gbps x 4',
  'hdmi-rx1: video format changed: 1920x1080p24 to 3840x2160p60',
];

const startMs = Date.UTC(2026, 9, 1);
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** One line in each form in turn, blocks of 1000 as if files had been put one after another. */
function lineOf(index: number): string {
  const ms = startMs + index * 100;
  const message =
    index % 50 === 7
      ? happenings[Math.floor(index / 50) % happenings.length]
      : chatter[(index * 7) % chatter.length];
  const date = new Date(ms);
  switch (Math.floor(index / 1000) % 5) {
    case 0:
      return `<134>1 ${date.toISOString()} processor avd ${400 + (index % 7)} - - ${message}\n`;
    case 1: {
      const clock = date.toISOString().slice(11, 19);
      const day = String(date.getUTCDate()).padStart(2);
      return `<134>${months[date.getUTCMonth()]} ${day} ${clock} switch avd[412]: ${message}\n`;
    }
    case 2:
      return `${date.toISOString().replace('T', ' ').replace('Z', '')} INFO  ${message}\n`;
    case 3:
      return `${JSON.stringify({ time: date.toISOString(), level: 'info', msg: message })}\n`;
    default:
      return `[${String(Math.floor(index / 10)).padStart(5)}.${String((index % 10) * 100000).padStart(6, '0')}] ${message}\n`;
  }
}

/** Writes made-up logs in five mixed forms, one line in fifty an event, until the file has `bytes`. */
export async function writeMixedLog(path: string, bytes: number): Promise<void> {
  const file = createWriteStream(path);
  let written = 0;
  for (let index = 0; written < bytes; ) {
    let block = '';
    for (const end = index + 2000; index < end; index += 1) block += lineOf(index);
    written += block.length;
    if (!file.write(block)) await once(file, 'drain');
  }
  file.end();
  await once(file, 'finish');
}
