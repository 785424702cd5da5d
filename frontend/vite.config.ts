import { readFileSync } from "node:fs";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";

/** What is bundled keeps its licence beside it. */
function licences(packages: readonly string[]): Plugin {
  const text = packages.map((name) => {
    const found = ["LICENSE", "LICENSE.md"].map((file) => `node_modules/${name}/${file}`);
    for (const file of found) {
      try {
        return `${name}\n\n${readFileSync(file, "utf8").trim()}\n`;
      } catch {
        continue;
      }
    }
    throw new Error(`${name} has no licence file`);
  });
  return {
    name: "licences",
    generateBundle() {
      const source = text.join("\n----------------------------------------\n\n");
      this.emitFile({ type: "asset", fileName: "licences.txt", source });
    },
  };
}

export default defineConfig({
  plugins: [svelte(), licences(["svelte", "three"])],
  build: {
    target: "es2022",
    // The content policy allows no data: addresses, and a polyfill would be an inline script.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 800,
  },
  server: { proxy: { "/api": "http://127.0.0.1:4000" } },
});
