/// <reference types="vite-plugin-pwa/client" />

/** The version in package.json, written in when the program is built. */
declare const __APP_VERSION__: string;
