using System.Security.Cryptography;
using System.Text;

namespace FitCheck.Page.Server;

/// <summary>A file of the page as it is sent, and the tag by which a browser knows that it has it.</summary>
internal sealed class Asset
{
    public Asset(PageAsset asset)
    {
        (ContentType, Bytes) = (asset.ContentType, Encoding.UTF8.GetBytes(asset.Text));
        Tag = $"\"{Convert.ToHexStringLower(SHA256.HashData(Bytes)[..16])}\"";
    }

    public string ContentType { get; }

    public byte[] Bytes { get; }

    public string Tag { get; }
}
