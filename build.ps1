#!/usr/bin/env pwsh

<#
.SYNOPSIS
  One door to everything a contributor does: dotnet tool restore; dotnet tool run pwsh build.ps1 TASK [TASK...]
.DESCRIPTION
  restore   packages, by the lock files
  format    put the source into its form (check-format only looks)
  build     everything, warnings as errors
  test      the tests that need nothing but the SDK
  outside   the tests that read our files with programs of others (needs what .ci/run installs)
  bench     the benchmarks, as ratios taken in one run
  samples   build presets/samples into out-samples
  pack      the library and the dotnet tool into artifacts
  all       restore, check-format, build, test, samples, pack
  help      this text
#>
[CmdletBinding(PositionalBinding = $false)]
param(
    [Parameter(Position = 0, ValueFromRemainingArguments)]
    [string[]] $Task = @('help'),
    [string] $Configuration = 'Release'
)

$ErrorActionPreference = 'Stop'
Set-StrictMode -Version Latest
Set-Location $PSScriptRoot

$tasks = [ordered]@{
    'restore'      = { Invoke-Step dotnet restore PlatformForge.sln }
    'format'       = { Invoke-Step dotnet format PlatformForge.sln --no-restore }
    'check-format' = { Invoke-Step dotnet format whitespace --folder --verify-no-changes --exclude tests/PlatformForge.Outside.Tests/node_modules/ }
    'build'        = { Invoke-Step dotnet build PlatformForge.sln -c $Configuration -p:RunAnalyzers=true }
    'test'         = { Invoke-Step dotnet test PlatformForge.sln -c $Configuration }
    'outside'      = {
        Invoke-Step npm ci --prefix tests/PlatformForge.Outside.Tests
        Invoke-Step dotnet test tests/PlatformForge.Outside.Tests -c $Configuration
    }
    'bench'        = { Invoke-Step dotnet run -c Release --project tests/PlatformForge.Benchmarks }
    'samples'      = {
        foreach ($sample in Get-ChildItem presets/samples -Filter *.toml | Sort-Object Name) {
            Invoke-Step dotnet run -c $Configuration --project src/PlatformForge.Cli -- build $sample.FullName --output "out-samples/$($sample.BaseName)"
        }
        Invoke-Step dotnet run -c $Configuration --project src/PlatformForge.Cli -- survey presets/samples/fennimoor.toml --output out-samples/fennimoor-survey

        # What the guide shows beside the folders above.
        $own = Join-Path ([IO.Path]::GetTempPath()) "platformforge-guide-$PID"
        Invoke-Step dotnet run -c $Configuration --project src/PlatformForge.Cli -- paper presets/samples/fennimoor.toml --output "$own/paper"
        Invoke-Step dotnet run -c $Configuration --project src/PlatformForge.Cli -- gauges presets/samples/fennimoor.toml --output "$own/gauges"
        foreach ($picture in Get-ChildItem docs/guide/pictures) {
            Copy-Item (Get-ChildItem $own -Recurse -Filter $picture.Name | Select-Object -First 1).FullName $picture.FullName
        }
        Remove-Item $own -Recurse
    }
    'pack'         = {
        Invoke-Step dotnet pack src/PlatformForge -c $Configuration -o artifacts
        Invoke-Step dotnet pack src/PlatformForge.Cli -c $Configuration -o artifacts
    }
    'help'         = { (Get-Help $PSCommandPath).Synopsis, (Get-Help $PSCommandPath).Description.Text | Write-Host }
}

function Invoke-Step {
    $program, $arguments = $args
    Write-Host "> $args"
    & $program @arguments
    if ($LASTEXITCODE -ne 0) {
        Write-Host "$program ended with $LASTEXITCODE."
        exit 1
    }
}

$wanted = foreach ($name in $Task) {
    if ($name -eq 'all') { 'restore', 'check-format', 'build', 'test', 'samples', 'pack' } else { $name }
}

foreach ($name in $wanted) {
    if (-not $tasks.Contains($name)) {
        Write-Host "There is no task '$name'. Known: $($tasks.Keys -join ', '), all."
        exit 2
    }
}

foreach ($name in $wanted) {
    & $tasks[$name]
}
