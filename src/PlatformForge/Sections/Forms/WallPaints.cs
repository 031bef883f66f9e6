using PlatformForge.Masonry;
using PlatformForge.Solids;
using PlatformForge.Solids.Bodies.Walls;
using PlatformForge.Solids.Reliefs;

namespace PlatformForge.Sections.Forms;

/// <summary>
/// What a faced platform's walls show where they have no face of their own: at the joints between sections, inside, and under the deck. They are made of what
/// the front is made of; walls with another finish, or none, keep their own.
/// </summary>
internal static class WallPaints
{
    /// <summary>Leaves a wall as it is, and says that its paint is its own.</summary>
    /// <param name="shows">What it shows.</param>
    public static IWallRelief Plain(Paint shows) => shows == Paint.Wall ? Walls : Rendered;

    private static readonly IWallRelief Walls = new PlainWall(FacingRelief.OwnWall), Rendered = new PlainWall((byte)Paint.Render);

    /// <summary>A raised solid as it shows.</summary>
    /// <param name="raised">The solid.</param>
    /// <param name="front">What its front is faced with.</param>
    public static Solid Shown(Solid raised, WallFinish front)
    {
        byte body = (byte)FacingRelief.PaintOf(front);
        byte[] paints = Array.ConvertAll(raised.Mesh.Paints, p => p == FacingRelief.OwnWall ? (byte)Paint.Wall : p == (byte)Paint.Wall ? body : p);
        return raised with { Mesh = raised.Mesh with { Paints = paints } };
    }

    private sealed class PlainWall(byte ground) : IWallRelief
    {
        public byte? Ground => ground;

        public IEnumerable<ReliefField> Fields(WallPanel panel) => [];
    }
}
