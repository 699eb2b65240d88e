import { request as httpRequest } from 'node:http';
import { expect, it } from 'vitest';
import { openTestApp } from '../../support/test-app.ts';
import { openTestTicket } from '../../support/tickets.ts';
import { metadataHeader, signed } from './tus-client.ts';

it('does not hold the server up when it closes: what is under way is broken off', async () => {
  const test = await openTestApp('embedded');
  const { ticketId } = await openTestTicket(test);
  const address = await test.app.listen({ port: 0, host: '127.0.0.1' });
  const { technician } = test.home;
  const metadata = { ticketId, about: JSON.stringify({ kind: 'log' }), filename: 'a.log' };
  const begun = await fetch(`${address}/uploads`, {
    method: 'POST',
    headers: {
      ...signed(technician),
      'upload-length': '1000000',
      'upload-metadata': metadataHeader(metadata),
    },
  });
  const request = httpRequest(`${address}${begun.headers.get('location')}`, {
    method: 'PATCH',
    headers: {
      ...signed(technician),
      'upload-offset': '0',
      'content-type': 'application/offset+octet-stream',
      'content-length': 1_000_000,
    },
  });
  const brokenOff = new Promise((done) => request.on('error', done));
  request.write(Buffer.alloc(1000, 'a'));
  await new Promise((wait) => setTimeout(wait, 300));
  const stopped = test.close();
  expect(await brokenOff).toBeInstanceOf(Error);
  await stopped;
});
