export { buildPacket } from './build-packet.ts';
export { checkPackets } from './check-packets.read.ts';
export { filesOf } from './packet-row.ts';
export { packetRefsOf } from './packets.read.ts';
export { packetRoutes } from './routes.ts';
export { timelineOf } from './timeline.ts';
