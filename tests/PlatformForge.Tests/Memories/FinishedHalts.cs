namespace PlatformForge.Tests.Memories;

/// <summary>Short platforms with what walls and trestles have, each of two sections.</summary>
internal static class FinishedHalts
{
    /// <summary>Brick with piers, a plinth and a batter; downpipes and weep holes at the back.</summary>
    public const string Walls = """
        layout = { name = "Nether Wall", scale = "4mm", rail_top = 8 }
        track = [{ name = "siding", alignment = [{ straight = 420 }] }]
        vehicle = [{ name = "wagon", length = 76, pivots = 40, width = 30 }]
        clearance = { running = 0.7, print = 0.2, fitting = 0.2 }
        printer = { bed = [120, 120] }

        [[platform]]
        name = "dock"
        height = 12
        face = { track = "siding", side = "left", from = 120, to = 300 }
        deck = { thickness = 1.6, width = 40 }

        [platform.facing]
        bond = "english"
        piers = { pitch = 40 }
        downpipes = { on = "back", at = [180.5, 241] }
        plinth = { height = 3 }
        batter = 0.4
        opening = [{ kind = "weep", on = "back", pitch = 30 }]
        """;

    /// <summary>Timber bents with braces both ways, and a ramp.</summary>
    public const string Trestle = """
        layout = { name = "Nether Trestle", scale = "4mm", rail_top = 8 }
        track = [{ name = "siding", alignment = [{ straight = 420 }] }]
        vehicle = [{ name = "wagon", length = 76, pivots = 40, width = 30 }]
        clearance = { running = 0.7, print = 0.2, fitting = 0.2 }
        printer = { bed = [120, 120] }

        [[platform]]
        name = "dock"
        height = 12
        face = { track = "siding", side = "left", from = 120, to = 300 }
        deck = { thickness = 1.6, width = 40 }
        ramps = { end = { gradient = 8 } }
        coping = { kind = "timber" }
        trestle = { pitch = 30, longitudinal = "cross" }
        """;
}
