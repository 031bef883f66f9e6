using PlatformForge.Platforms.Specs;
using PlatformForge.Units;
using static System.FormattableString;

namespace PlatformForge.Platforms.Rules;

/// <summary>What is asked of strips that are laid into the deck: room for them, and air over them.</summary>
internal static class StripRules
{
    public static void Check(
        PlatformSpec spec, Action<string, string, double, double, string, (string Sentence, Cure? Cure)> atMost, List<Finding> findings)
    {
        var lines = spec.Faces.Select(f => (Key: f.WhiteLine is null ? $"{spec.Key}.line" : $"{spec.Key}.{f.Key}.line", Line: f.WhiteLine ?? spec.WhiteLine,
            Face: f))
            .Where(l => l.Line is not null).DistinctBy(l => l.Key).ToArray();
        if (spec.Tactile is { } tactile)
        {
            Tactile(spec, tactile, [.. lines.Select(l => l.Line!)], atMost, findings);
        }

        if (!spec.IsIsland && spec.Back.Strip is { } strip)
        {
            AlongBack(spec, strip, atMost);
        }

        foreach (var (key, line, face) in lines.Where(l => l.Line!.Form == LineForm.Strip && l.Line.Rise > 0 && l.Face.BodiesPassOver))
        {
            findings.Add(UnderBodies(key + ".rise", "white line", line!.Rise, face));
        }
    }

    private static void Tactile(
        PlatformSpec spec,
        TactileSpec tactile,
        WhiteLineSpec[] lines,
        Action<string, string, double, double, string, (string Sentence, Cure? Cure)> atMost,
        List<Finding> findings)
    {
        double deepest = Math.Min(spec.Coping.Thickness, spec.Deck.Thickness) - LineMake.LeastFloor;
        atMost("tactile.depth", "depth", tactile.Depth, deepest, "leaves too little under it", ("make deck and coping thicker", null));
        double room = spec.Deck.Width - tactile.Width - LineMake.LeastLand;
        atMost("tactile.inset", "tactile strip's inset", tactile.Inset, room, "puts it off the deck", ("make the strip narrower or the deck wider", null));
        foreach (var line in lines)
        {
            double least = line.Inset + line.Width + LineMake.LeastLand;
            if (tactile.Inset < least - Tolerances.Rounding && tactile.Inset + tactile.Width > line.Inset - LineMake.LeastLand)
            {
                findings.Add(OnLine(spec.Key + ".tactile.inset", tactile.Inset, line, least));
            }
        }

        if (spec.Faces.FirstOrDefault(f => f.BodiesPassOver) is { } face && tactile.Rise > 0)
        {
            findings.Add(UnderBodies(spec.Key + ".tactile.rise", "tactile strip", tactile.Rise, face));
        }
    }

    // The strip that a wall, or a row of fence, at the back is set in.
    private static void AlongBack(
        PlatformSpec spec,
        (string Key, double Taken, LineMake Make) strip,
        Action<string, string, double, double, string, (string Sentence, Cure? Cure)> atMost)
    {
        double deepest = spec.Deck.Thickness - LineMake.LeastFloor, widest = spec.Deck.Width - spec.Coping.Width - LineMake.LeastLand - BackSpec.Lip;
        atMost($"back.{strip.Key}.depth", "depth", strip.Make.Depth, deepest, "leaves too little under it", ("make the deck thicker", null));
        string across = strip.Make.Wall is null ? "width" : "thickness";
        double air = 2 * strip.Make.Fit;
        atMost($"back.{strip.Key}.{across}", across, strip.Taken - air, widest - air, "puts it on the coping", ("make the deck wider", null));
    }

    private static Finding OnLine(string key, double inset, WhiteLineSpec line, double least)
    {
        double right = Math.Ceiling(least * 100) / 100;
        return Finding.Error(
            "PF4151",
            key,
            Invariant($"The tactile strip begins {inset:0.###} mm from the edge, where the white line runs from {line.Inset:0.###} to ")
                + Invariant($"{line.Inset + line.Width:0.###} mm."),
            Invariant($"Give an inset of {right:0.##} mm or more."),
            FaultKind.DesignRule).Curing(Cure.Set(key, right));
    }

    private static Finding UnderBodies(string key, string what, double rise, FaceSpec face) => Finding.Error(
        "PF4152",
        key,
        Invariant($"The {what} stands {rise:0.###} mm over the deck, under bodies that pass over the coping with {face.VerticalGap:0.###} mm of air."),
        "Give a rise of 0, which is flush with the deck, or hold the edge to bodies as well (bodies_pass_over = false).",
        FaultKind.DesignRule).Curing(Cure.Set(key, 0));
}
