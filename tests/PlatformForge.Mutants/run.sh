#!/usr/bin/env bash
# Changes one thing at a time in the library and sees whether the tests notice. Needs the SDK alone.
#   tests/PlatformForge.Mutants/run.sh all                                   300 a room by lot, seed 1
#   tests/PlatformForge.Mutants/run.sh all --count 60                        a sample of it: the first 60 of the same lot
# or in pieces:
#   tests/PlatformForge.Mutants/run.sh prepare --rooms Sections --count 60   compiles the mutants in
#   tests/PlatformForge.Mutants/run.sh go --minutes 3                        goes on for three minutes from where the last run stopped
#   tests/PlatformForge.Mutants/run.sh report --least 90                     the table, and the survivors one by one
# and while tests are written for survivors:
#   tests/PlatformForge.Mutants/run.sh renew                                 builds the tests again; those with new names are noted
#   tests/PlatformForge.Mutants/run.sh go --again                            tries survivors on tests that they have not met
#   tests/PlatformForge.Mutants/run.sh go --again --most 60                  the same with more seconds of tests for each
#   tests/PlatformForge.Mutants/run.sh all --keys 0123456789,abcdef0123      some mutants, by the key that the report tells
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
case "${1:-}" in prepare | renew | all)
  # CI=true: properties run from one seed, so that a mutant's fate is no matter of luck.
  CI=true dotnet build "$here" -c Release -v q -p:RunAnalyzers=false -p:GenerateDocumentationFile=false -p:EmitCompilerGeneratedFiles=true >"$here/build.log" 2>&1 || { cat "$here/build.log"; exit 1; }
  rm "$here/build.log"
  ;;
esac
exec dotnet "$here/bin/Release/net10.0/PlatformForge.Mutants.dll" "$@"
