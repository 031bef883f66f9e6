using PlatformForge.Masonry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Kernel;

namespace PlatformForge.Sections.Forms;

/// <summary>Everything that a section's solid depends on.</summary>
/// <param name="Blocks">Body, joints and lettering, in the kernel's order.</param>
/// <param name="Facing">What its walls are faced with; null leaves them plain.</param>
internal sealed record RaiseInput(ColumnBlock[] Blocks, PrintedFacing? Facing)
{
    /// <summary>What its front is faced with, whether or not a printer makes anything of it; null where nothing is asked for.</summary>
    public WallFinish? Front { get; init; }
}

/// <summary>A section raised, wherever it will lie.</summary>
/// <param name="Solid">The piece, layout frame.</param>
/// <param name="Faced">Its faced walls, laid flat.</param>
internal sealed record RaisedSection(Solid Solid, IReadOnlyList<FacedWall> Faced)
{
    /// <summary>The piece in the colours that it shows.</summary>
    public Solid Shown { get; init; } = Solid;

    /// <summary>Raises the piece.</summary>
    public static RaisedSection Of(RaiseInput input, CancellationToken cancel)
    {
        var reliefs = input.Facing?.Reliefs();
        var solid = SolidRaiser.Raise(input.Blocks, reliefs?.ByName);
        cancel.ThrowIfCancellationRequested();
        return new(solid, [.. reliefs?.All.SelectMany(r => r.Walls) ?? []])
        {
            Shown = (input.Facing?.Front ?? input.Front) is { } front ? WallPaints.Shown(solid, front) : solid,
        };
    }
}
