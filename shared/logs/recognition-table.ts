/**
 * One row of the recognition table: plain data, so that anyone can add one and an organisation can keep its own.
 *
 * A line is of this kind when it has at least one word of every group in `all`, in any order, and none of `none`.
 * A word is whole (`low` isn't in `slow`), case doesn't count, a space in it stands for whatever parts words (`hot
 * plug` finds `Hot-Plug`), and `*` at its end leaves it open. Rows hold no regular expressions: with words alone no
 * row can make reading a log slow.
 */
export type RecognitionRow = {
  kind: string;
  all: readonly (readonly string[])[];
  none?: readonly string[];
  /** A line that the row finds, made up; it is tried when the row is taken in. */
  example: string;
  note: string;
};

const words = (list: string): string[] => list.split(', ');

const failed = words('fail*, error, errors, timeout, timed out, aborted, gave up, unsuccessful');
const noError = words(
  'no error, no errors, without error, without errors, errors 0, 0 errors, error 0, error null',
);
const done = words('done, complete, completed, succeeded, success, successful, successfully, passed, ok');
const begun = words('start, started, starting, begin*, began, initiat*, request*, restart*, retry*');
const contentProtection = words('content protection, hdcp*, authentication, key exchange, receiver id list');
/** People and computers authenticate too. */
const signIn = words('password, login, user, ssh*, root, pam, certificate, web, wifi, wpa, tls, su');
const training = words('link training, training, frl training, lane training, retraining');
const hotPlug = words('hot plug, hotplug, hpd, hot unplug, hotunplug');
const sink = words('sink, display, monitor');
const picture = words('sync, hsync, vsync, tmds, pixel clock, video signal, input signal, video input');
const otherSync = words(
  'ntp, ptp, time sync, time server, clock sync, lip, audio, network, wifi, file, cloud, database',
);
/** A report of how things stand is no happening. */
const report = words('status, statistics, stats, poll*');

/**
 * What log lines are about, in the trade's generic words. Words and their order are common practice, no source;
 * examples are made up. Of the rows that fit a line the first counts, so the particular comes before the general.
 * To teach a new one: add a row, with a line that it should find as its example.
 */
export const recognitionRows: readonly RecognitionRow[] = [
  {
    kind: 'linkRateReduced',
    all: [
      words('link, training, frl, lane, lanes'),
      words(
        'fall back, fallback, fell back, falling back, reduc*, downgrad*, lower rate, lowered, step down',
      ),
    ],
    example: 'link training failed at 12 Gbps x 4, falling back to 8 Gbps x 4',
    note: 'The two ends settle for a slower rate than they tried: points at margin on that link.',
  },
  {
    kind: 'linkTrainingFailed',
    all: [training, failed],
    none: noError,
    example: 'tx0: link training timeout on lane 2',
    note: 'Fixed-rate link training didn’t end well (HDMI 2.1 and later).',
  },
  {
    kind: 'linkTrained',
    all: [training, [...done, 'locked']],
    example: 'tx0: FRL training passed, 10 Gbps x 4',
    note: 'Link training ended well.',
  },
  {
    kind: 'linkTrainingStarted',
    all: [training, begun],
    example: 'tx0: link training started at 12 Gbps x 4',
    note: 'Also each new start: many in a row are a finding in themselves.',
  },
  {
    kind: 'authenticationFailed',
    all: [
      contentProtection,
      [...failed, ...words('lost, denied, refused, revoked, invalid, mismatch, broken')],
    ],
    none: [...signIn, ...noError],
    example: 'tx0: content protection authentication failed, topology timeout',
    note: 'Content protection between two neighbours didn’t come about, or broke.',
  },
  {
    kind: 'authenticationDone',
    all: [contentProtection, [...done, ...words('authenticated, established, enabled, active, encrypted')]],
    none: signIn,
    example: 'tx0: content protection authenticated',
    note: 'Content protection is up.',
  },
  {
    kind: 'authenticationStarted',
    all: [contentProtection, [...begun, 'attempt*', 'enter*']],
    none: signIn,
    example: 'tx0: content protection: starting authentication',
    note: 'Each new start counts.',
  },
  {
    kind: 'edidFailed',
    all: [
      words('edid, ddc'),
      [
        ...failed,
        ...words('corrupt*, invalid, bad, nack, no ack, mismatch, empty, cannot, could not, unable'),
      ],
    ],
    none: noError,
    example: 'rx1: EDID read failed: checksum error in block 1',
    note: 'The source side couldn’t learn what the sink accepts.',
  },
  {
    kind: 'edidRead',
    all: [
      ['edid'],
      [...done, ...words('read, reading, parsed, loaded, valid, changed, updated, received, copied')],
    ],
    example: 'tx0: EDID read, 256 bytes',
    note: 'A sink was read, or its EDID changed.',
  },
  {
    kind: 'syncLost',
    all: [
      [
        ...words('sync lost, lost sync, sync loss, loss of sync, no sync, out of sync, lost lock'),
        ...words('signal lost, lost signal, signal loss, loss of signal, no signal, no stable signal'),
        ...words(
          'video lost, lost video, video loss, no video, no input, input lost, picture lost, stream lost',
        ),
        ...words('clock lost, lost clock, loss of clock, no clock'),
      ],
    ],
    none: [...otherSync, ...report],
    example: 'rx1: sync lost',
    note: 'The receiving side sees no usable picture any more.',
  },
  {
    kind: 'syncLost',
    all: [picture, words('lost, loss, unlock*, missing, dropped, unstable, absent, gone, disappeared')],
    none: [...otherSync, ...report],
    example: 'rx1: TMDS clock unlocked',
    note: 'The same, said in more words.',
  },
  {
    kind: 'syncFound',
    all: [
      [...picture, 'video', 'signal'],
      words('found, locked, lock, detected, acquired, stable, restored, regained, recovered, back'),
    ],
    none: [...otherSync, ...report, 'strength'],
    example: 'rx1: sync found, 3840x2160p60',
    note: 'The receiving side has a picture again.',
  },
  {
    kind: 'hotPlugDown',
    all: [
      hotPlug,
      [
        ...words(
          'low, lost, down, removed, deassert*, de asserted, unplug*, disconnect*, absent, falling, pulse',
        ),
        ...words('toggled, dropped, hpd 0, hpd state 0, hpd off, hot unplug, hotunplug'),
      ],
    ],
    none: report,
    example: 'tx0: hot plug detect low',
    note: 'The hot plug line fell, for a pulse or for longer; the source side drops the picture.',
  },
  {
    kind: 'hotPlugDown',
    all: [sink, words('disconnect, disconnected, removed, unplugged')],
    none: report,
    example: 'output 2: sink disconnected',
    note: 'The same in the words of the source side.',
  },
  {
    kind: 'hotPlugUp',
    all: [
      hotPlug,
      [
        ...words(
          'high, up, assert, asserted, plugged, connect, connected, present, rising, raised, detected',
        ),
        ...words('hpd 1, hpd state 1, hpd on, hot plug event, hotplug event'),
      ],
    ],
    none: [...report, 'not connected'],
    example: 'tx0: HPD asserted',
    note: 'The hot plug line rose; the source side starts over with EDID and content protection.',
  },
  {
    kind: 'hotPlugUp',
    all: [sink, words('connected, plugged, attached')],
    none: [...report, 'not connected'],
    example: 'output 2: sink connected',
    note: 'The same in the words of the source side.',
  },
  {
    kind: 'formatChange',
    all: [
      [
        ...words(
          'format, resolution, video mode, timing, timings, signal mode, mode set, modeset, infoframe',
        ),
        ...words('frame rate, refresh rate, colour space, color space, colour depth, color depth, bit depth'),
        ...words('hdr, dynamic range, info frame'),
      ],
      words('change, changed, changing, switch, switched, switching, set, new'),
    ],
    none: words('log format, date format, time format, file format, no change, not changed, unchanged'),
    example: 'rx1: video format changed: 1920x1080p24 to 3840x2160p60',
    note: 'Resolution, rate, colour or dynamic range of the signal is another now.',
  },
  {
    kind: 'firmware',
    all: [
      words('firmware, fw, software, bootloader, fpga, mcu, dsp, scaler, build'),
      [
        ...words('version, versions, ver, rev, revision, build, release, firmware, fw'),
        ...words('v0*, v1*, v2*, v3*, v4*, v5*, v6*, v7*, v8*, v9*'),
      ],
    ],
    none: words('update available, new version available, downloading'),
    example: 'main board firmware version 4.12.3',
    note: 'Counts only where a version can be read out of the line.',
  },
  {
    kind: 'restart',
    all: [
      [
        ...words(
          'restarting, restarted, rebooting, rebooted, reboot, system restart, system reset, watchdog reset',
        ),
        ...words(
          'watchdog restart, watchdog reboot, power on reset, cold start, warm start, cold boot, warm boot',
        ),
        ...words('booting, boot complete, boot completed, system started, system start, system startup'),
        ...words('start up complete, startup complete, powering up, power up, brown out, brownout'),
      ],
    ],
    none: words(
      'reboot required, restart required, reboot scheduled, no reboot, service, daemon, thread, process',
    ),
    example: 'watchdog reset, rebooting',
    note: 'The device itself started over. A kernel’s seconds going back to 0 say so too.',
  },
];
