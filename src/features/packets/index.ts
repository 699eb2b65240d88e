export { buildPacket } from './build-packet.ts';
export { packetRoutes } from './routes.ts';
export { timelineOf } from './timeline.ts';
