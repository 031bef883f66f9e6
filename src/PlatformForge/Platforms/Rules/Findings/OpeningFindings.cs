using PlatformForge.Masonry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules.Findings;

/// <summary>The messages on openings in walls.</summary>
internal static class OpeningFindings
{
    public static Finding TooWide(string key, OpeningSpec opening)
    {
        double widest = Math.Floor(opening.Height * opening.Width / opening.Rise * 0.95 * 100) / 100;
        return Finding.Error(
            "PF4158",
            key + ".width",
            Invariant($"The arch of an opening {opening.Width:0.###} mm wide rises {opening.Rise:0.###} mm, and from sill to crown it ")
                + Invariant($"is {opening.Height:0.###} mm high."),
            Invariant($"Give a width of {widest:0.##} mm or less, or more height."),
            FaultKind.DesignRule).Curing(widest);
    }

    /// <param name="key">Key of the opening.</param>
    /// <param name="opening">What is asked.</param>
    /// <param name="wall">Height of the wall, mm.</param>
    /// <param name="crown">Height over the baseboard that its crown may have, and that it may have under a flat head, mm.</param>
    public static Finding TooHigh(string key, OpeningSpec opening, double wall, (double AsAsked, double Flat) crown)
    {
        double height = Math.Floor((crown.AsAsked - opening.Sill) * 100) / 100, sill = Math.Floor((crown.AsAsked - opening.Height) * 100) / 100;
        var (remedy, cure) = height > opening.Rise + 0.1 ? (Invariant($"Give a height of {height:0.##} mm or less."), Cure.Set(key + ".height", height))
            : sill >= 0 ? (Invariant($"Give a sill of {sill:0.##} mm or less."), Cure.Set(key + ".sill", sill))
            : opening.Rise > 0 && opening.Sill + opening.Height <= crown.Flat ? ("Give a flat head (head = \"flat\").", Cure.Text(key + ".head", "flat"))
            : ("Leave it out, or give a smaller height, width and sill.", Cure.LeaveOut(key));
        return Finding.Error(
            "PF4159",
            key + ".height",
            Invariant($"An opening {opening.Height:0.###} mm high, {opening.Sill:0.###} mm over the baseboard, does not fit the wall, which is {wall:0.###} ")
                + "mm high, with what lies over it.",
            remedy,
            FaultKind.DesignRule).Curing(cure);
    }

    public static Finding InTheWay(string key, OpeningSpec opening, double at, string what, double? free) => Finding.Warning(
        "PF4190",
        key + ".at",
        Invariant($"No opening is made right through the wall at {at:0.##} mm: {what} is behind it."),
        free is { } place ? Invariant($"Move it to {place:0.##} mm, where there is room behind the wall, or have it made as a recess.")
            : "Have it made as a recess.")
        .Curing(Moved(key, opening, at, free));

    // The list of places with one of them moved.
    private static Cure Moved(string key, OpeningSpec opening, double at, double? free)
    {
        int index = opening.At.ToList().IndexOf(at);
        return free is { } place ? Cure.Set(Invariant($"{key}.at[{index}]"), place) : Cure.Set(key + ".through", false);
    }

    public static Finding LeftOut(string key, OpeningSpec opening, double at, string against, double? free)
    {
        var finding = Finding.Warning(
            "PF4160",
            key + ".at",
            Invariant($"No opening is made at {at:0.##} mm: {against} is too near."),
            free is { } place ? Invariant($"Move it to {place:0.##} mm, where there is room, or make it smaller.") : Needs(opening));
        return free is not null ? finding.Curing(Moved(key, opening, at, free)) : finding;
    }

    public static Finding NoPlace(string key, OpeningSpec opening) => Finding.Warning(
        "PF4160",
        key + ".at",
        "No opening is made: there is no place for one between piers, joints of sections, other openings and ends where the wall is high enough.",
        Needs(opening));

    private static string Needs(OpeningSpec opening) =>
        Invariant($"It needs {opening.Width:0.##} mm and half a brick on either side in one panel; make it smaller, or have fewer piers.");
}
