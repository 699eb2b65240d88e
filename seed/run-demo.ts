import { readConfig } from '../src/config.ts';
import { type StartOptions, startServer } from '../src/start.ts';
import { startedOrTold } from '../src/start-fault.ts';
import { demoPassword, firm, makersDesk } from './firm.ts';
import { isPlanted, plantOrganisations, plantSites, plantTickets } from './plant-demo.ts';
import { inside } from './session.ts';
import { storyClock } from './story-clock.ts';

const clock = storyClock();
const prepared: StartOptions = {
  now: clock.now,
  prepare: async (app, services) => {
    if (await isPlanted(services)) return;
    await plantOrganisations(services);
    clock.to(new Date(Date.now() - 10 * 86_400_000));
    const planted = await plantSites(inside(app));
    clock.backToReal();
    await plantTickets(inside(app), planted, clock);
  },
};
const running = await startedOrTold(() =>
  startServer(readConfig({ LOG_LEVEL: 'warn', ...process.env }), prepared),
);
const { address } = running;

console.log(`Halfsplit demo at ${address}  (reference: ${address}/reference)`);
console.log(`Everybody's password is ${demoPassword}. Organisation, email, role:`);
for (const { handle, members } of [firm, makersDesk]) {
  for (const member of members)
    console.log(`  ${handle.padEnd(12)} ${member.email.padEnd(28)} ${member.role}`);
}
console.log('Ctrl-C stops it. The data stays in the data folder (HALFSPLIT_DATA, by default .halfsplit).');

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    running.stop().then(
      () => process.exit(0),
      () => process.exit(1),
    );
  });
}
