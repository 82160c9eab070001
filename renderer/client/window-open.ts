/** Over the loopback door the page holds one stream open, so that the host knows when its last window has closed. */
if (location.protocol === 'http:') new EventSource('window');

export {};
