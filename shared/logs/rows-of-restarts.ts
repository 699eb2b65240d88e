import type { RecognitionRow } from './recognition-row.ts';
import { otherTrades, words } from './recognition-words.ts';

const again = words(
  'system start, power applied, power on start, restarts, resets, reboots, restart, restarts, restarting, restarted, reboot, reboots, rebooting, rebooted, reset, rst, resetting, boot, booting, booted, boot cause, started, starting, start up, startup, starting up, respawn*, power cycle, reset cause, reset reason, reset source, started again, going down for restart, last uptime',
);
const goingDown = words(
  'shut down, shutdown, shutting down, power off, powering off, halted, switched off, switching off, switches off',
);
const later = words(
  'required, scheduled, pending, no reboot, not needed, no restart, in case of, will restart after, recommended',
);
const onePart = words(
  'service, services, app, apps, client, daemon, thread, process, module, player, plugin',
);

/** Rows on the device itself starting over, by its cause where it says one. A kernel’s seconds going back say so too. */
export const rowsOfRestarts: readonly RecognitionRow[] = [
  {
    kind: 'restartHeat',
    all: [
      words(
        'thermal*, overheat*, over heat*, over temperature, overtemperature, over temp, overtemp, too hot, temperature, temperature limit, temperature too high, heat',
      ),
      [...again, ...goingDown],
    ],
    none: [...later, ...words('fan, normal, ok')],
    unlessOurs: otherTrades.filter((word) => word !== 'cpu'),
    example: 'overheated, shutting down',
    note: 'Too hot to go on: points at air, dust and the load of that device.',
  },
  {
    kind: 'restartWatchdog',
    all: [
      words('watchdog, wdt, wdog'),
      [...again, ...words('expired, bite, bark, timeout, timed out, fired, triggered, elapsed, cause')],
    ],
    none: words(
      'petted, kicked, fed, enabled, armed, disabled, starting watchdog, watchdog started, watchdog starting, no reset, running',
    ),
    example: 'watchdog reset, rebooting',
    note: 'The device hung, and its own guard started it over.',
  },
  {
    kind: 'restartCrash',
    all: [
      words(
        'panic, crash, crashed, crashes, exception, hard fault, hardfault, bus fault, software fault, software error, kernel fault, abnormal end, assert, lockup, segfault, segmentation fault, oops, signal 11, signal 6, sigsegv, sigabrt, core dump*, fatal, assertion, assert failed, out of memory, oom, stack overflow',
      ),
      again,
    ],
    none: later,
    unlessOurs: otherTrades,
    example: 'kernel panic, rebooting',
    note: 'Its software fell over.',
  },
  {
    kind: 'restartPower',
    all: [
      words(
        'power on reset, poweron, power on, power up, power restored, power applied, mains, cold, por, power cycle, power cycled, cold start, cold boot, mains loss, mains failure, mains lost, power loss, power lost, power failure, power fail, power outage, power interrupted, power was interrupted, power interruption, brown out, brownout, undervoltage, supply failure',
      ),
      [...again, 'cold start', 'cold boot'],
    ],
    none: later,
    unlessOurs: otherTrades,
    example: 'reset cause: power on',
    note: 'Its supply was gone: points at mains, plug or supply, where nobody switched it.',
  },
  {
    kind: 'restartUpdate',
    all: [
      words(
        'update, updated, updating, upgrade, upgraded, firmware, install, installed, flashing, flashed, new version, new software, new image, image written',
      ),
      words('restart, restarts, restarting, restarted, reboot, reboots, rebooting, rebooted, reset, resets'),
    ],
    none: [...later, ...onePart, ...words('check, failed, user requested')],
    unlessOurs: otherTrades,
    example: 'update done, rebooting',
    note: 'Started over to take a new version: whatever comes after may come of that.',
  },
  {
    kind: 'restartPerson',
    all: [
      words(
        'user, operator, admin*, installer, remote, remote control, front panel, web, web interface, request, requested, command, commanded, manual, manually, power key, power button, reset button, key held, button, menu, factory reset',
      ),
      words(
        'restart, restarts, restarting, restarted, reboot, reboots, rebooting, rebooted, reset, power cycle, soft reset',
      ),
    ],
    none: [...later, ...onePart, ...words('password, login, session')],
    unlessOurs: otherTrades,
    example: 'system reboot requested by remote',
    note: 'Somebody or something told it to.',
  },
  {
    kind: 'restart',
    all: [
      words(
        'restarting, restarted, rebooting, rebooted, reboot, system restart, system reset, warm start, warm boot, booting, boot complete, boot completed, system started, system start, system startup, system starting, start up complete, startup complete, system power up',
      ),
    ],
    none: [...later, ...onePart, 'reboot required', 'restart required', 'reboot scheduled'],
    unlessOurs: [...otherTrades, ...words('ui, gui, osd, menu, web, audio')],
    example: 'system started, uptime 0',
    note: 'The device itself started over, for no reason that it names.',
  },
];
