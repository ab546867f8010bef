import { readFileSync } from "node:fs"; import { chromium } from "playwright-core"; import { browserPath, QUIET } from "@witnessmark/e2e/browser";
const b = await chromium.launch({ executablePath: browserPath(), args: [...QUIET] }); const p = await b.newPage({ viewport: { width: 2000, height: 1500 } });
await p.setContent("<body style='margin:0;background:#888;display:flex;gap:8px;align-items:flex-start'>"+process.argv.slice(3).map(f=>`<img style="max-height:1480px;max-width:640px" src="data:image/png;base64,${readFileSync(f).toString("base64")}">`).join(""));
await p.screenshot({ path: process.argv[2]! }); await b.close();
