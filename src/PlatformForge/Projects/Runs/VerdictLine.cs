using PlatformForge.Exports.Files;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Projects.Runs;

/// <summary>A verdict in the one line that everybody reads: on the terminal, at the head of the report, on the key to full-size sheets.</summary>
public static class VerdictLine
{
    // mm: a shorter stretch is a place.
    private const double Stretched = 10;

    /// <summary>All that a report tells of a verdict.</summary>
    /// <inheritdoc cref="Of" path="/param"/>
    public static VerdictBrief Brief(Verdict verdict, IReadOnlyList<AsBuiltEdge> built)
    {
        bool many = verdict.Platforms > 1;
        return new(
            Of(verdict, built), verdict.IsClear && Fouled(built, many) is null,
            [
                .. verdict.Vehicles.Select(v => new HeldVehicle(
                    v.Vehicle, v.Track, (v.Closest ?? v.Tightest)?.Part ?? "", v.Closest is { } near ? Along(v.Tightest ?? near) + Beside(near, many)
                        : v.Tightest is { } leaning ? Along(leaning) + Beside(leaning, many)
                        + ", as it leans; standing true it comes to the height of nothing printed"
                        : "comes to the height of nothing printed",
                    v.Closest?.Clearance, v.Tightest?.Clearance ?? v.Closest?.Clearance)),
            ]);
    }

    /// <summary>The line everybody reads: least clearance, where, which vehicle.</summary>
    /// <param name="verdict">The verdict on the design.</param>
    /// <param name="built">Where edges stand by gaps measured on the layout; none when nothing was measured.</param>
    public static string Of(Verdict verdict, IEnumerable<AsBuiltEdge>? built = null)
    {
        bool many = verdict.Platforms > 1;
        string? fouled = Fouled(built ?? [], many);
        return (verdict.Passed, verdict.Closest) switch
        {
            // 'Clear' is a word for everything that is printed.
            (true, { } near) when !verdict.IsClear => Invariant($"What was looked at touches nothing. Least clearance {near.Clearance:0.00} ")
                + Invariant($"mm, {Where(near, many)}."),
            (true, null) when !verdict.IsClear => "What was looked at touches nothing.",
            (true, { } near) => Invariant($"{(fouled is null ? "Clear: nothing touches." : "Clear as planned.")} Least clearance {near.Clearance:0.00} ")
                + Invariant($"mm, {Where(near, many)}."),
            (true, null) when verdict.Tightest is { } leaning =>
                Invariant($"{(fouled is null ? "Clear: nothing touches." : "Clear as planned.")} Standing true no vehicle comes to the height of anything ")
                    + "printed; "
                    + Invariant($"leaning, {leaning.Vehicle} ({leaning.Part}) keeps play and budget, {Along(leaning)} ")
                    + Invariant($"of {leaning.Track}{Beside(leaning, many)}."),
            (true, null) => fouled is null ? "Clear: no vehicle comes to the height of anything printed."
                : "Clear as planned: no vehicle comes to the height of anything printed.",
            (false, { Clearance: < 0, InPlan: true } near) => Invariant($"Not passed. Overlaps by {-near.Clearance:0.00} mm, {Where(near, many)}."),
            (false, { Clearance: < 0 } near) => Invariant($"FOULS by {-near.Clearance:0.00} mm, {Where(near, many)}."),
            (false, { } near) => Invariant($"Not passed. Least clearance {near.Clearance:0.00} mm, {Where(near, many)}."),
            _ => "Not passed.",
        } + Open(verdict) + fouled;
    }

    // What was held against no vehicle, as a further sentence.
    private static string Open(Verdict verdict)
    {
        const int NamedAtMost = 4;
        return verdict.NotHeld.Count == 0 ? "" : " NOT HELD against any vehicle: " + string.Join("; ", verdict.NotHeld.Take(NamedAtMost))
            + (verdict.NotHeld.Count > NamedAtMost ? Invariant($"; and {verdict.NotHeld.Count - NamedAtMost} more") : "") + ".";
    }

    // What was measured on the layout and is fouled there, as a further sentence; null when nothing is.
    private static string? Fouled(IEnumerable<AsBuiltEdge> built, bool many)
    {
        var worst = built.Where(e => e.Worst?.Closest?.Left < 0).MinBy(e => e.Worst!.Closest!.Left);
        return worst?.Worst is { Closest: { } near } measure
            ? Invariant($" AS BUILT IT FOULS by {-near.Left:0.00} mm, at chainage {measure.Reading.Chainage:0.#} ")
            + Invariant($"mm{(many ? " of platform " + worst.Platform : "")}: {near.Vehicle} ({near.Part}).")
            : null;
    }

    /// <summary>Where along its track a vehicle comes nearest.</summary>
    public static string Along(Nearness near) => near.Stretch.To - near.Stretch.From > Stretched
        ? Invariant($"along chainage {near.Stretch.From:0} to {near.Stretch.To:0} mm")
        : Invariant($"at chainage {near.Chainage:0} mm");

    private static string Where(Nearness near, bool many) =>
        Invariant($"{Along(near)} of {near.Track}{Beside(near, many)}, {Height(near)}: {near.Vehicle} ")
            + Invariant($"({near.Part}{(near.Backwards ? ", running backwards" : "")})");

    /// <summary>Which platform, where there are several.</summary>
    public static string Beside(Nearness near, bool many) => many ? " at platform " + near.Platform : "";

    // A height that the part has; where nothing of the platform stands at any of its heights there is none to name.
    private static string Height(Nearness near) => !near.InPlan ? Invariant($"{near.Height:0.0} mm above rail top")
        : near.Height < near.Underside ? Invariant($"in plan, under a part whose underside is {near.Underside:0.0} mm above rail top")
        : "in plan, over the part";
}
