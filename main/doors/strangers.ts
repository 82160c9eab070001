/**
 * Connections of the loopback door that have not shown yet that they may come in. Anybody on this machine can open
 * some and say nothing; they must neither use up what the host may hold open nor keep the maker's browser out.
 */
import type { Server } from 'node:http';
import type { Socket } from 'node:net';

export interface Strangers {
  /** This request has shown that the connection may come in; its answer may take as long as it likes. */
  isKnown(socket: Socket): void;
}

/** Of more than `most` strangers the one that came first is dropped. */
export function watchStrangers(server: Server, max: number): Strangers {
  const strangers = new Set<Socket>();
  server.on('connection', (socket) => {
    strangers.add(socket);
    socket.once('close', () => strangers.delete(socket));
    const [first] = strangers;
    if (strangers.size > max) first?.destroy();
  });
  return {
    isKnown(socket) {
      strangers.delete(socket);
      // Node sets the time anew for each request, and an answer may take longer.
      socket.setTimeout(0);
    },
  };
}
