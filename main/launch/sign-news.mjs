/**
 * Signs the news of a version for the static file that installed programs may ask for:
 *   BOLT_NEWS_KEY="$(cat key.pem)" node main/launch/sign-news.mjs news.json > news.txt
 * The key is Ed25519, PKCS#8 as PEM, as "openssl genpkey -algorithm ed25519" makes it.
 */
import { sign } from 'node:crypto';
import { readFileSync } from 'node:fs';

const [file] = process.argv.slice(2);
const key = process.env.BOLT_NEWS_KEY;
if (file === undefined || !key) {
  process.stderr.write(
    'Write: BOLT_NEWS_KEY="$(cat key.pem)" node main/launch/sign-news.mjs news.json > news.txt\n',
  );
  process.exit(2);
}
const body = readFileSync(file);
process.stdout.write(Buffer.concat([Buffer.from(`${sign(null, body, key).toString('base64')}\n`), body]));
