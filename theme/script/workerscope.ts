// What a service worker finds around it. The types of the page's own surroundings come with the compiler, and both
// cannot be asked for at once, so this says as much as the worker uses.

interface Waiting extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface Asked extends Waiting {
  readonly request: Request;
  readonly clientId: string;
  respondWith(answer: Promise<Response>): void;
}

interface Told extends Waiting {
  readonly data: unknown;
  readonly ports: readonly MessagePort[];
}

interface Client {
  readonly url: string;
  postMessage(message: unknown): void;
}

interface WorkerScope {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: {
    get(id: string): Promise<Client | undefined>;
    matchAll(how: { includeUncontrolled: boolean }): Promise<readonly Client[]>;
  };
  skipWaiting(): Promise<void>;
  oninstall: (event: Waiting) => void;
  onfetch: (event: Asked) => void;
  onmessage: (event: Told) => void;
}

export const scope = globalThis as unknown as WorkerScope;

/** The address of the site. */
export const site: string = scope.registration.scope;
