using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Proofs;
using PlatformForge.Solids;
using PlatformForge.Tests.Sections;
using PlatformForge.Track;
using Xunit;

namespace PlatformForge.Tests.Proofs;

/// <summary>Masks of decks that have the colour of their coping, which the outside tests, reading colours, cannot measure.</summary>
public class MaskColourTests
{
    [Theory]
    [InlineData(CopingKind.Timber, PavingKind.Planks, Paint.Timber)]
    [InlineData(CopingKind.Bricks, PavingKind.Bricks, Paint.Paver)]
    public void A_deck_in_the_colour_of_its_coping_has_the_masks_of_one_in_its_own(CopingKind coping, PavingKind paving, Paint paint)
    {
        var same = Of(coping, paving);
        var (own, other) = (Workbench.Made(same, Workbench.Printer, new()), Workbench.Made(Of(CopingKind.Slabs, PavingKind.Flags), Workbench.Printer, new()));

        // No coping's colour is there, and all of its top is of the deck's.
        Assert.DoesNotContain(own.Sections.SelectMany(s => s.Solid.Mesh.Paints), p => p == (byte)Paint.Coping);
        Assert.Contains(own.Sections.SelectMany(s => s.Solid.Mesh.Paints), p => p == (byte)paint);
        var (masks, told) = (MaskPiece.Of(own), MaskPiece.Of(other));
        Assert.Equal(told.Count, masks.Count);
        Assert.True(masks.Count > 0);
        Assert.All(masks.Zip(told), pair =>
        {
            Assert.Equal((pair.Second.Name, pair.Second.Section), (pair.First.Name, pair.First.Section));
            Assert.Equal(pair.Second.Outline.Count, pair.First.Outline.Count);
            Assert.All(pair.First.Outline.Zip(pair.Second.Outline), p => Assert.True((p.First - p.Second).Length < 1e-9));
        });

        // On the other platform the coping's colour ends where the mask of the deck begins.
        var cover = masks.First(m => m.Name.StartsWith("deck cover", StringComparison.Ordinal));
        double wide = cover.Outline.Max(p => p.Y) - cover.Outline.Min(p => p.Y);
        var mesh = other.Sections[0].Solid.Mesh;
        double edge = Enumerable.Range(0, mesh.TriangleCount).Where(t => mesh.Paints[t] == (byte)Paint.Coping)
            .SelectMany(t => Enumerable.Range(0, 3).Select(k => mesh.Vertices[mesh.Triangles[(3 * t) + k]].Y)).Max();
        Assert.Equal(mesh.Vertices.Max(v => v.Y) - edge, wide, 0.01);
    }

    private static PlatformPlan Of(CopingKind coping, PavingKind paving) => Workbench.Straight(150, Side.Left, s => s with
    {
        Coping = s.Coping with { Kind = coping, Width = 6, SlabLength = 12, Nosing = Nosing.Chamfered, ArrisChamfer = 0.3 },
        Deck = s.Deck with { Paving = PavingSpec.For(new(76.2)) with { Kind = paving } },
        Features = [],
    });
}
