#!/usr/bin/env bash
# Changes one thing at a time in the library and sees whether the tests notice. Needs the SDK alone.
#   tests/PlatformForge.Mutants/run.sh all                                   300 a room by lot, seed 1; hours of processor
#   tests/PlatformForge.Mutants/run.sh all --count 60 --jobs 2               a sample of it: the first 60 of the same lot
#   tests/PlatformForge.Mutants/run.sh prepare --rooms Sections --count 60   compiles the mutants in, then
#   tests/PlatformForge.Mutants/run.sh go --minutes 3                        goes on for three minutes from where the last run stopped
#   tests/PlatformForge.Mutants/run.sh go --minutes 3 --wide                 tries survivors on the tests of all rooms
#   tests/PlatformForge.Mutants/run.sh report --least 90                     what came of it, survivors one by one
#   tests/PlatformForge.Mutants/run.sh all --keys 0123456789,abcdef0123      some mutants again, by the key that the report tells
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
if [ "${1:-}" = prepare ] || [ "${1:-}" = all ]; then
  # CI=true: properties run from one seed, so that a mutant's fate is no matter of luck.
  CI=true dotnet build "$here" -c Release -v q -p:RunAnalyzers=false -p:GenerateDocumentationFile=false -p:EmitCompilerGeneratedFiles=true >"$here/build.log" 2>&1 || { cat "$here/build.log"; exit 1; }
  rm "$here/build.log"
fi
exec dotnet "$here/bin/Release/net10.0/PlatformForge.Mutants.dll" "$@"
