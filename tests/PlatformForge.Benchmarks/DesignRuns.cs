using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using PlatformForge.Clearance.Vehicles;
using PlatformForge.Tests.Clearance.Motion;
using PlatformForge.Tests.Verification;

namespace PlatformForge.Benchmarks;

/// <summary>
/// Random designs against the tests' sweeper: never nearer than the budget, never farther than a fitted edge must be. Seeds follow one another from the first,
/// so a fault is found again by its number; a report named .csv tells each of them. Of the first N of <c>--verify</c> the sections are written as files, read
/// back and verified as well. With <c>--halts</c>, at the end of the command, platforms that end about where vehicles halt at buffers.
/// </summary>
internal static class DesignRuns
{
    private const string Usage = "designs [--count N] [--seed FIRST] [--report FILE] [--verify N] [--halts]";

    /// <summary>Runs them and tells what came of it; 1 when a design is at fault.</summary>
    public static int Report(string[] args)
    {
        int count = 1000, first = 1, verified = 0;
        string? file = null;
        bool halts = args is [.., "--halts"];
        for (int i = 0; i + 1 < args.Length; i += 2)
        {
            (count, first, file, verified) = args[i] switch
            {
                "--count" => (int.Parse(args[i + 1], CultureInfo.InvariantCulture), first, file, verified),
                "--seed" => (count, int.Parse(args[i + 1], CultureInfo.InvariantCulture), file, verified),
                "--report" => (count, first, args[i + 1], verified),
                "--verify" => (count, first, file, int.Parse(args[i + 1], CultureInfo.InvariantCulture)),
                _ => throw new ArgumentException(Usage),
            };
        }

        if (count == 1)
        {
            Console.Write(One(halts ? RandomDesign.AtHalt(first) : RandomDesign.Of(first)));
        }

        var clock = Stopwatch.StartNew();
        var trials = new ConcurrentBag<DesignTrial>();
        Parallel.For(0, count, i => trials.Add(DesignTrial.Of(halts ? RandomDesign.AtHalt(first + i) : RandomDesign.Of(first + i))));
        var folders = new ConcurrentBag<DesignFolder>();
        Parallel.For(0, verified, i => folders.Add(DesignFolder.Of(halts ? RandomDesign.AtHalt(first + i) : RandomDesign.Of(first + i))));
        string report = Text([.. trials.OrderBy(t => t.Design.Seed)], first, clock.Elapsed) + Text([.. folders.OrderBy(f => f.Design.Seed)]);
        Console.Write(report);
        if (file is not null)
        {
            File.WriteAllText(file, file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase) ? Table(trials) : report);
        }

        return trials.Any(t => t.IsTooNear || t.IsTooFar) || folders.Any(f => !f.IsClear) ? 1 : 0;
    }

    // What verification said of the designs that were written to files.
    private static string Text(DesignFolder[] folders)
    {
        DesignFolder[] written = [.. folders.Where(f => f.Verdict is not null)], foul = [.. written.Where(f => !f.IsClear)];
        return folders.Length == 0 ? ""
            : string.Concat(foul.Take(40)
                .Select(f =>
                    FormattableString.Invariant(
                        $"  design {f.Design.Seed}: {f.Verdict!.Tightest}; {string.Join(" ", f.Verdict.Findings.Select(x => x.Code + " " + x.Message))}\n"))
            .Prepend(FormattableString.Invariant($"written to files and verified: {written.Length} of {folders.Length}, {foul.Length} not clear; ")
            + "least left over after play and "
            + FormattableString.Invariant($"budget: {written.Min(f => f.Verdict!.Tightest?.Clearance ?? double.PositiveInfinity):F4} mm; ")
            + FormattableString.Invariant(
                $"not written: {string.Join(", ", folders.Where(f => f.Refused is not null).GroupBy(f => f.Refused).Select(g => $"{g.Key} {g.Count()}"))}\n")));
    }

    // All of a design that a fault was found in.
    private static string One(RandomDesign design)
    {
        DesignTrial.Of(design, out var plan);
        string Corners(VehiclePart part) => string.Join(" ", part.Outline.Select(c => FormattableString.Invariant($"({c.X:F2},{c.Y:F2})")));
        string Parts(Vehicle vehicle) => string.Join("; ", vehicle.Parts.Select(p =>
            FormattableString.Invariant($"{p.Name} {p.Carrier} {p.ZLow:F3} to {p.ZHigh:F3} {Corners(p)}")));
        string[] stock = [.. design.Runs.SelectMany(r => r.Vehicles).Select(v => FormattableString.Invariant($"{v.Name}: pivots {v.PivotCentres:F2} ")
            + FormattableString.Invariant($"wheelbases {v.LeadingWheelbase:F2} {v.TrailingWheelbase:F2} ")
            + FormattableString.Invariant($"ahead {v.LeadingPivotAhead:F2} {v.TrailingPivotAhead:F2}; {Parts(v)}"))];
        string governs = plan is null ? ""
            : string.Join(", ", plan.Requirement.GoverningVehicle.Zip(plan.Requirement.GoverningPart, plan.Requirement.AtWall ?? []).GroupBy(g => g)
                .Select(g => FormattableString.Invariant($"{plan.Requirement.Called(g.Key.First)} {g.Key.Second} {(g.Key.Third ? "at the wall" : "")} ")
                + FormattableString.Invariant($"x{g.Count()}")));
        return FormattableString.Invariant($"{design.Spec.Face}\n{design.Spec.Coping}\nheight {design.Spec.Height} ")
            + FormattableString.Invariant(
                $"ramp {design.Spec.StartRamp}\n{design.Budget.Play}\nmargin {design.Budget.Margin}\n{string.Join("\n", stock)}\ngoverns: {governs}\n");
    }

    // A row a design, for whoever looks at how they lie.
    private static string Table(IEnumerable<DesignTrial> trials)
        =>
        string.Concat(trials.OrderBy(t => t.Design.Seed)
            .Select(t => FormattableString.Invariant($"{t.Design.Seed},{t.Design.Spec.Face.Edge},{t.Refused},{t.Spare:F5},{t.Allowed:F5},\"{t.Nearest}\"\n"))
            .Prepend("seed,edge,refused,spare,allowed,nearest\n"));

    private static string Text(DesignTrial[] trials, int first, TimeSpan time)
    {
        var lines = new List<string>();
        void Say(params FormattableString[] line) => lines.Add(string.Concat(line.Select(FormattableString.Invariant)));
        DesignTrial[] planned = [.. trials.Where(t => double.IsFinite(t.Spare)).OrderBy(t => t.Spare)],
            fitted = [.. planned.Where(t => t.Design.Spec.Face.Edge == PlatformForge.Platforms.Specs.EdgeStyle.Fitted)];
        double processor = Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;
        var refused = trials.Where(t => !double.IsFinite(t.Spare)).GroupBy(t => t.Refused ?? "nothing comes").OrderByDescending(g => g.Count());
        Say($"{trials.Length} designs from seed {first}: {planned.Length} planned, {trials.Length - planned.Length} refused, ",
            $"{time.TotalSeconds:F0} s ({processor:F0} s of processor time)");
        Say($"refused: {string.Join(", ", refused.Select(g => $"{g.Key} {g.Count()}"))}");
        if (planned.Length > 0)
        {
            Say($"least over the budget: {planned[0].Spare:F4} mm (design {planned[0].Design.Seed}); allowed {-DesignTrial.Rounding:F3}");
        }

        if (fitted.Length > 0)
        {
            double half = fitted[fitted.Length / 2].Spare, nearlyAll = fitted[(int)(fitted.Length * 0.99)].Spare;
            Say($"fitted edges, over the budget at their nearest place: half within {half:F4} mm, 99 of 100 within {nearlyAll:F4}, ",
                $"most {fitted[^1].Spare:F4} (design {fitted[^1].Design.Seed}); allowed {DesignTrial.Generous:F3}");
        }

        DesignTrial[] near = [.. planned.Where(t => t.IsTooNear)], far = [.. planned.Where(t => t.IsTooFar).OrderByDescending(t => t.Spare)];
        Say($"too near: {near.Length}; too far: {far.Length}");
        lines.AddRange(near.Concat(far).Take(40).Select(t => FormattableString.Invariant($"  design {t.Design.Seed}: {t.Spare:F4} mm; {t.Nearest}")));
        return string.Join('\n', lines) + "\n";
    }
}
