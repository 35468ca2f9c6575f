npx esbuild .p5.tmp.mts --bundle --platform=node --format=esm --outfile=/tmp/e-p6.mjs --log-level=error && node /tmp/e-p6.mjs $1 $2 $3 > /tmp/e-p6.log; head -${4:-60} /tmp/e-p6.log
