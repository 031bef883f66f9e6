using PlatformForge.Masonry;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules.Findings;

/// <summary>The messages on plinths and corbelled courses.</summary>
internal static class ProfileFindings
{
    public static Finding TooManyCorbelled(string key, int courses, double wall, int most) => Finding.Error(
        "PF4161",
        key + ".facing.corbel.courses",
        Invariant($"{courses} corbelled courses leave nothing of a wall {wall:0.##} mm high."),
        most > 0 ? Invariant($"Give {most} or fewer, or leave them out.") : "Leave them out, or make the platform higher.",
        FaultKind.DesignRule).Curing(most > 0 ? Cure.Set(key + ".facing.corbel.courses", most) : Cure.LeaveOut(key + ".facing.corbel"));

    /// <param name="key">The platform.</param>
    /// <param name="steps">Its steps.</param>
    /// <param name="wall">Height of the wall, mm.</param>
    /// <param name="most">How many find room.</param>
    /// <param name="projection">How far it may stand out for that, mm, where its steps follow from it; null where they are stated.</param>
    public static Finding TooManySteps(string key, int steps, double wall, int most, double? projection)
    {
        var (figure, remedy) = projection is { } narrow
            ? (Cure.Set(key + ".facing.plinth.projection", narrow), Invariant($"Give a projection of {narrow:0.##} mm or less"))
            : (Cure.Set(key + ".facing.plinth.steps", most), Invariant($"Give {most} or fewer"));
        return Finding.Error(
            "PF4162",
            key + (projection is null ? ".facing.plinth.steps" : ".facing.plinth.projection"),
            Invariant($"A plinth of {steps} steps, a course each, finds no room in a wall {wall:0.##} mm high."),
            most > 0 ? remedy + ", or leave the plinth out." : "Leave the plinth out, or make the platform higher.",
            FaultKind.DesignRule).Curing(most > 0 ? figure : Cure.LeaveOut(key + ".facing.plinth"));
    }

    public static Finding PlinthHeight(string key, double height, (double Least, double Most) room, double wall)
    {
        double figure = height < room.Least ? Math.Ceiling(room.Least * 100) / 100 : Math.Floor(room.Most * 100) / 100;
        return Finding.Error(
            "PF4163",
            key + ".facing.plinth.height",
            height < room.Least ? Invariant($"A plinth {height:0.###} mm high is lower than its steps, a course each.")
                : Invariant($"A plinth {height:0.###} mm high leaves no course over it in a wall {wall:0.##} mm high, under what is corbelled."),
            Invariant($"Give {Math.Ceiling(room.Least * 100) / 100:0.##} to {Math.Floor(room.Most * 100) / 100:0.##} mm."),
            FaultKind.DesignRule).Curing(figure);
    }

    public static Finding HeadHeight(string key, double height, (double Least, double Most) room, double wall)
    {
        string at = key + ".facing.piers.height";
        bool fits = Math.Ceiling(room.Least * 100) <= Math.Floor(room.Most * 100);
        double figure = height < room.Least ? Math.Ceiling(room.Least * 100) / 100 : Math.Floor(room.Most * 100) / 100;
        return Finding.Error(
            "PF4167",
            at,
            height < room.Least ? Invariant($"Buttresses {height:0.###} mm high are lower than their sloping heads and a course of their fronts.")
                : Invariant($"Buttresses {height:0.###} mm high leave no course over them in a wall {wall:0.##} mm high."),
            fits ? Invariant($"Give {Math.Ceiling(room.Least * 100) / 100:0.##} to {Math.Floor(room.Most * 100) / 100:0.##} mm, or less ")
                + "projection; or leave it out for piers up to the coping."
                : "Leave it out for piers up to the coping, or give less projection.",
            FaultKind.DesignRule).Curing(fits ? Cure.Set(at, figure) : Cure.LeaveOut(at));
    }

    public static Finding OnTrestle(string key) => Finding.Error(
        "PF4168",
        key,
        "A trestle stands on bents and has no walls that stand out in part or lean.",
        "Leave it out, or the trestle.",
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));

    public static Finding LeansTooFar(string key, double batter, double most)
    {
        double figure = Math.Floor(most * 100) / 100;
        return Finding.Error(
            "PF4166",
            key + ".facing.batter",
            Invariant($"Walls that lean back {batter:0.###} mm from foot to coping do so by more than one in four."),
            Invariant($"Give {figure:0.##} mm or less."),
            FaultKind.DesignRule).Curing(figure);
    }

    public static Finding OpeningInPlinth(string key, double sill, double least) => Finding.Error(
        "PF4164",
        key + ".sill",
        Invariant($"The opening's sill, {sill:0.###} mm over the baseboard, lies in the plinth."),
        Invariant($"Give {Math.Ceiling(least * 100) / 100:0.##} mm or more, or a lower plinth."),
        FaultKind.DesignRule).Curing(Math.Ceiling(least * 100) / 100);

    /// <param name="key">The opening.</param>
    /// <param name="batter">Key of the lean.</param>
    /// <param name="opening">Its figures.</param>
    /// <param name="course">The highest that goes into one course, mm; nothing where no course takes one.</param>
    public static Finding OpeningLeans(string key, string batter, OpeningSpec opening, double course)
    {
        double figure = Math.Floor(course * 100) / 100;
        bool isSmall = figure > 0 && figure < opening.LeastSize, fits = opening.Rise <= 0 && opening.Height > figure && figure > 0 && !isSmall;
        string what = opening.Rise > 0 ? "one with an arch" : Invariant($"one {opening.Height:0.###} mm high");
        return Finding.Error(
            "PF4136",
            fits ? key + ".height" : key,
            figure > 0 ? Invariant($"A wall that leans draws back with every course, {figure:0.##} mm high, and an opening goes into one of them: {what} does ")
                + "not."
                : "A wall of rubble that leans has no courses of bricks, and no opening goes into it.",
            fits ? Invariant($"Give {figure:0.##} mm or less, or an upright wall.")
                : isSmall ? Invariant($"Leave it out, or give an upright wall: below {opening.LeastSize:0.##} mm it closes between two lines of the nozzle.")
                : "Give a flat opening no higher than a course, or an upright wall.",
            FaultKind.DesignRule).Curing(fits ? Cure.Set(key + ".height", figure) : isSmall ? Cure.LeaveOut(key) : Cure.LeaveOut(batter));
    }

    // Least height of the sides under an arch, mm.
    private const double LeastSides = 0.1;

    /// <param name="key">The opening.</param>
    /// <param name="opening">Its figures.</param>
    /// <param name="most">Height that it has room for, mm.</param>
    public static Finding OpeningInCorbel(string key, OpeningSpec opening, double most)
    {
        double height = opening.Height, figure = Math.Floor(most * 100) / 100;
        figure = figure > opening.Rise + LeastSides && figure >= opening.LeastSize ? figure : 0;
        var finding = Finding.Error(
            "PF4165",
            key + ".height",
            Invariant($"An opening {height:0.###} mm high reaches into the corbelled courses with what lies over it."),
            figure > 0 ? Invariant($"Give {figure:0.##} mm or less, a lower sill, or fewer corbelled ")
                + "courses." : "Leave it out, or give fewer corbelled courses.",
            FaultKind.DesignRule);
        return figure > 0 ? finding.Curing(figure) : finding.Curing(Cure.LeaveOut(key));
    }
}
