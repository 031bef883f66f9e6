using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules.Findings;

/// <summary>The messages on trestles.</summary>
internal static class TrestleFindings
{
    // Least depth of a cap that is offered, mm: four layers of 0.2.
    private const double LeastCap = 0.8;

    public static Finding TooLow(string key, double room, TrestleSpec trestle)
    {
        double cap = Floor(room - trestle.Sill - TrestleSpec.LeastPost);
        bool isLower = cap >= LeastCap;
        var finding = Finding.Error(
            "PF4180",
            key + ".trestle.cap",
            Invariant($"Under the deck are {Math.Max(0, room):0.##} mm: too low for a bent, whose cap, sill and posts of {TrestleSpec.LeastPost:0.#} mm take ")
                + Invariant($"{trestle.LeastHeight:0.##} mm."),
            isLower ? Invariant($"Give a cap of {cap:0.##} mm or less, a thinner deck, or a higher platform.")
                : "Leave the trestle out: walls carry a platform so low.",
            FaultKind.DesignRule);
        return isLower ? finding.Curing(cap) : finding.Curing(Cure.LeaveOut(key + ".trestle"));
    }

    public static Finding NothingFaced(string key, bool hasRamps) => Finding.Warning(
        "PF4181",
        key + ".facing",
        "The platform stands on bents all along: there is no wall to be faced.",
        hasRamps ? "Leave the facing out, or let walls carry the ramps (trestle.ramps = \"walls\")."
            : "Leave the facing out; trestle.boarded closes bents with planks.")
        .Curing(Cure.LeaveOut(key + ".facing"));

    public static Finding WideSpan(string key, double pitch, double span, double times)
    {
        double least = Floor(span);
        return Finding.Warning(
            "PF4182",
            key + ".trestle.pitch",
            Invariant($"Bents {pitch:0.##} mm apart are more than {times:0} times the depth of deck and bearers: the deck sags between them."),
            Invariant($"Give {least:0.##} mm or less, or deeper bearers.")).Curing(least);
    }

    public static Finding NeedsWall(string key, string what) => Finding.Error(
        "PF4183",
        key,
        Invariant($"{what} go with walls, and a trestle has none between its ramps."),
        "Leave them out, or the trestle.",
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key));

    public static Finding HoldsNothing(string key) => Finding.Error(
        "PF4169",
        key + ".back.retaining",
        "A retaining wall is asked for along the back of a trestle: between its bents nothing stands under the wall, "
            + "and the ground that it holds would run out below it.",
        "Leave the wall out, or the trestle.",
        FaultKind.DesignRule).Curing(Cure.LeaveOut(key + ".back.retaining"));

    public static Finding ManyPosts(string key, TrestleSpec trestle, double width, int most) => Finding.Error(
        "PF4184",
        most >= 2 ? key + ".trestle.posts" : key + ".trestle.post",
        Invariant($"{trestle.Posts ?? 2} rows of posts {trestle.Post:0.##} mm wide leave nothing to see through under a deck of {width:0.#} mm."),
        most >= 2 ? Invariant($"Give {most} rows or fewer, or thinner posts.") : "Make the posts thinner, or the deck wider.",
        FaultKind.DesignRule).Curing(most >= 2 ? Cure.Set(key + ".trestle.posts", most) : null);

    public static Finding ThickBrace(string key, TrestleSpec trestle, double most)
    {
        double thin = Floor(most);
        var finding = Finding.Error(
            "PF4185",
            key + ".trestle.brace",
            Invariant($"Braces {trestle.Brace:0.##} mm thick do not lie within posts of {trestle.Post:0.##} mm."),
            Invariant($"Give {Math.Max(0.2, thin):0.##} mm or less, thicker posts, or no braces."),
            FaultKind.DesignRule);
        return thin >= 0.2 ? finding.Curing(thin) : finding.Curing(Cure.Text(key + ".trestle.braces", "none"));
    }

    public static Finding DeepBearer(string key, TrestleSpec trestle) => Finding.Error(
        "PF4186",
        key + ".trestle.bearer",
        Invariant($"Bearers {trestle.Bearer:0.##} mm deep would touch the ground where the lowest bent stands, which is {trestle.LeastHeight:0.##} mm high."),
        Invariant($"Give {trestle.Cap:0.##} mm, the depth of the cap, or a deeper cap."),
        FaultKind.DesignRule).Curing(trestle.Cap);

    public static Finding SolidFeet(string key, HeightProfile profile, TrestleStretch bents, TrestleSpec trestle)
    {
        var feet = new List<string>();
        if (bents.From > profile.From)
        {
            feet.Add(Invariant($"{profile.From:0.#} to {bents.From:0.#}"));
        }

        if (bents.To < profile.To)
        {
            feet.Add(Invariant($"{bents.To:0.#} to {profile.To:0.#}"));
        }

        return Finding.Note(
            "PF4187",
            key + ".trestle.ramps",
            Invariant($"From chainage {string.Join(" and ", feet)} mm the ramp is too low for bents, which take {trestle.LeastHeight:0.##} mm, ")
                + "and stands on a solid foot.");
    }

    public static Finding CloseBents(string key, TrestleSpec trestle)
    {
        double pitch = Math.Ceiling(2 * trestle.Post * 10) / 10;
        return Finding.Error(
            "PF4188",
            key + ".trestle.pitch",
            Invariant($"Bents {trestle.Pitch:0.##} mm apart with posts of {trestle.Post:0.##} mm leave less open than they fill."),
            Invariant($"Give {pitch:0.#} mm or more."),
            FaultKind.DesignRule).Curing(pitch);
    }

    public static Finding TooThin(string key, string what, double thickness, double lost, double least)
    {
        double right = Math.Ceiling((least + lost - Tolerances.Rounding) * 100) / 100;
        return Finding.Warning(
            "PF4189",
            key,
            Invariant($"The {what} is {thickness - lost:F2} mm thick, less than two lines of the nozzle, {least:F2} mm."),
            Invariant($"Give {right:0.##} mm or more.")).Curing(right);
    }

    public static Finding BowedBay(string key, double bow, double room, double? pitch)
    {
        var finding = Finding.Error(
            "PF4193",
            key + ".trestle.longitudinal",
            Invariant($"On the curve a straight brace from bent to bent lies {bow:0.00} mm beside the middle of its posts, and they leave it {room:0.00}: ")
                + "it would stand out before their faces, which are what vehicles are held against.",
            pitch is { } fits ? Invariant($"Give a pitch of {fits:0.#} mm or less, thinner braces, or none along the platform.")
                : "Give thinner braces, or none along the platform (longitudinal = \"none\").",
            FaultKind.DesignRule);
        return pitch is { } cure ? finding.Curing(Cure.Set(key + ".trestle.pitch", cure)) : finding.Curing(Cure.Text(key + ".trestle.longitudinal", "none"));
    }

    public static Finding HiddenBraces(string key, string side, bool hasOther)
    {
        string other = side == "front" ? "back" : "front";
        var finding = Finding.Warning(
            "PF4194",
            key + ".trestle.braced",
            $"Braces along the platform are asked for between the posts of its {side}, whose boards hide them.",
            hasOther ? $"Brace the other side (braced = \"{other}\"), or leave the {side} open." : "Leave the braces along the platform out, or a side open.");
        return finding.Curing(hasOther ? Cure.Text(key + ".trestle.braced", other) : Cure.Text(key + ".trestle.longitudinal", "none"));
    }

    public static Finding BracesLeftOut(string key, int leftOut, int set) => Finding.Note(
        "PF4195",
        key + ".trestle.longitudinal",
        Invariant($"{leftOut} of {leftOut + set} braces along the platform are left out: what goes through the deck there would cut them in two."));

    private static double Floor(double value) => Math.Floor((value + Tolerances.Rounding) * 100) / 100;
}
