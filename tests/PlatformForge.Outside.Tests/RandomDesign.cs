using static System.FormattableString;

namespace PlatformForge.Outside.Tests;

/// <summary>Project files of platforms with crossfall on curves, in scales between 1:43 and 1:160, all from a seed.</summary>
internal static class RandomDesign
{
    public static string Text(int seed)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + (random.NextDouble() * (high - low));
        double ratio = Math.Round(Between(43, 160), 1), full = 1000 / ratio; // mm of the model for a metre at full size
        double radius = Math.Round(Between(48, 130) * full), turn = Math.Round(Between(10, 40) * full), coach = Math.Round(20 * full);
        string hand = random.Next(2) == 0 ? "left" : "right", side = random.Next(2) == 0 ? "left" : "right";
        double from = Math.Round(coach + Between(2, 12)), length = Math.Round(Between(380, 620)), height = Math.Round(0.915 * full, 2);
        double crossfall = Math.Round(Between(40, 80)), width = Math.Round(Between(3, 4.6) * full, 1);
        string ramps = random.Next(2) == 0 ? "" : "ramps = { end = { gradient = 8 } }\n";
        string fence = random.Next(2) == 0 ? "" : Invariant($"[platform.fence]\npitch = {2.4 * full:F1}\ninset = 2.5\n");
        return Invariant($$"""
            [layout]
            name = "Random"
            ratio = {{ratio}}
            gauge = {{1.26 * full:F2}}
            rail_top = {{Math.Round(Between(5, 8), 1)}}

            [[track]]
            name = "up"
            alignment = [
              { straight = {{coach}} },
              { transition = {{turn}}, to_radius = {{radius}}, hand = "{{hand}}" },
              { curve = {{radius}}, length = {{from + length + coach}}, hand = "{{hand}}" },
            ]

            [[vehicle]]
            name = "coach"
            length = {{18 * full:F1}}
            pivots = {{12.5 * full:F1}}
            width = {{2.7 * full:F1}}

            [clearance]
            running = 0.7

            [[platform]]
            name = "up side"
            height = {{height}}
            face = { track = "up", side = "{{side}}", from = {{from}}, to = {{from + length}}, edge = "fitted" }
            {{ramps}}deck = { thickness = 1.5, width = {{width}}, crossfall = {{crossfall}} }
            {{fence}}
            [printer]
            bed = [220, 220]
            height = 250
            """);
    }
}
