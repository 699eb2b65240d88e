/** Words that several rows share. All of them are common practice, no source. `words` reads a list parted by commas. */
export const words = (list: string): string[] => list.split(', ');

export const failed = words(
  'fail*, error, errors, timeout, timed out, abort*, gave up, giving up, give up, unsuccessful*, ng, nok, not ok, no response, no reply, no answer, not done, not complete, not completed, not ready, never, mismatch*, expired, exceed*, refus*, reject*, denied, wrong, cannot, could not, can t, unable, did not, does not, doesn t, didn t, bad, invalid, stuck, stopped answering, missing, limit reached, retry limit, revocation, over limit, over the limit, exhausted, incomplete, torn, terminated, unreachable, unavailable, unreadable, overrun, underrun, violat*',
);
export const noError = words(
  'no error, no errors, without error, without errors, errors 0, 0 errors, error 0, error null, no mismatch, no failures, no change, no problem, not needed, not required, not supported, not used, not lost, never lost, no loss',
);
export const done = words(
  'done, complete, completed, succeeded, success, successful, successfully, pass, passed, ok, finished, good, verified, fine, settled',
);
/** Whatever is lost, broken or not so. */
export const bad = [
  ...failed,
  ...words(
    'lost, loss, lol, los, gone, absent, drop, dropped, drops, dropping, drop out, dropped out, dropout, dropouts, disappear*, vanish*, went away, fell, falling, low, down, off, no, none, not, unlock, unlocked, unstable, interrupted, interruption, broke, broken, revoked, dead, out of range, out of tolerance, out of sync, dip, dips, sag, sagged, sags, short, shorted, cut, cut off, disabled, stopped, stops, tripped, blew, blown, any more, anymore, broke off, too long, too many, too deep, too few, too low, too high, differs, different, corrupt*, unauth*, inactive, unencrypted, unlocks, null, search, hunt, without, removed, removal, remove, detach*, unplug*, disconnect*, deassert*, de asserted, false, disabl*, glitch*, collaps*, below threshold, below limit, fault, faulty, unpowered, degraded, no longer, flicker*, blank, muted, ceased, hang, hung, froze, frozen, nack, empty, misaligned, desync*, bouncing, bounced, flapping, weak, lock 0, locked 0, stable 0, signal 0, sync 0, valid 0, det 0, present 0',
  ),
];
/** Whatever is there, works or came about. Counts only where nothing is bad. */
export const good = [
  ...done,
  ...words(
    'found, locked, lock, locks, detected, acquired, stable, present, valid, up, on, high, rose, rising, raised, returned, resumed, back, appeared, established, negotiated, connected, connect, plugged, plug, attached, inserted, insertion, assert, asserted, active, enabled, authenticated, encrypted, encrypting, ciphering, true, yes, normal, within tolerance, trained, recovered, restored, regained, arriv*, running, achieved, ready, in sync, applied, available, got, gained, seen, match, matches, secure, secured, accepted, agreed, in range, steady, attach, step up, agreed on',
  ),
];
export const begun = words('start, started, starting, begin*, began, initiat*, request*, restart*, retry*');
/** What takes the good word in a line back, beside all that is bad. */
export const notYet = words('wait, waiting, expect*, if, until, unless, searching, looking for, search');
/** What was lost is there again. */
export const regained = words(
  'regained, recovered, restored, reacquired, re acquired, is back, came back, back after, back again, stable again, ok again, good again, up again, locked again, present again, arriving again, there again, found again, returned, resumed',
);
/** Somebody tries for it, or can't. */
export const inVain = words(
  'fail*, cannot, can t, could not, not, unable, try*, attempt*, retry*, giving up, gave up, timeout, timed out, lost again, unplugged again, gone again, down again',
);

/** A report of how things stand is no happening. */
export const report = words('status, statistics, stats, poll*, counter, counters');
/** The same, where what it reports is bad all the same. */
export const count = words('statistics, stats, counter, counters, poll*');

/** A line that has one of these is about the signal chain, whatever else it names. */
export const ourWords = words(
  'hdmi*, hpd, hot plug, hotplug, edid, ddc, hdcp*, tmds, frl, flt, scdc, ksv*, ake, ske, content protection, session key, displayport, copy protection, sink, infoframe, hsync, vsync, 4l, extender, hdbt, fibre, optical',
);

const radio = words(
  'wlan*, wifi, wi fi, wpa*, wireless, access point, ap, ssid, bssid, bluetooth, bt, ble, zigbee, z wave, zwave, thread, rf, roaming, station, beacon, hotspot',
);
const network = words(
  'eth*, ethernet, lan, dhcp*, dns, tcp, udp, http*, https, tls, ssl, network, net, snmp, arp, router, gateway, vpn, socket, ping, mqtt, cloud, server, smtp, imap, pop3, mail*, email, e mail, sip, telnet, ssh*, ftp, upnp, multicast, peer, api, client, internet',
);
const tuners = words(
  'tuner*, dvb*, dab, fm, am, sat, satellite, transponder, antenna, aerial, broadcast, radio',
);
const peripherals = words(
  'usb*, hub, sd, sdcard, card, keyboard, mouse, headset, headphone*, speaker*, printer, camera, phone, disk, ssd, hdd, nvme, storage, raid, filesystem, fs, partition, sensor*, doorbell, door',
);
const background = words(
  'cron*, sched*, scheduler, scheduled, job, jobs, task, ntp*, ptp, rtc, time sync, time server, clock sync, chrony*, timezone, backup, playlist, streaming, rebuffer*, buffering, bitrate, app store, sql*, db, database, cache, log, logs, library, licence, license, drm, subscription, package, packages, voice, assistant, weather, index*',
);
const house = words(
  'lamp, fan, trigger, contact, closure, lights, lighting, light scene, scene, dmx, knx, bus power, relay, alarm, blind*, shade*, hvac, ups, battery, thermostat, door station, volume, brightness, amp, amplifier, backlight, memory, cpu, heap',
);
const people = words(
  'ui, menu, osd, gui, user, login, password, session, screen saver, screensaver, front panel, remote, ir, keypad, touch panel, web, page, account, pin',
);
const updating = words('update, updates, updater, ota, download*, upgrade');
const sound = words('audio, lip, lip sync, arc, earc, spdif, speaker, mic');

/** Of a network, a periphery, a background job or the house around. */
export const otherTrades = [...radio, ...network, ...tuners, ...peripherals, ...background, ...house];
/** Those, and what people do at screens, updates and sound. */
export const otherTopics = [...otherTrades, ...people, ...updating, ...sound];
