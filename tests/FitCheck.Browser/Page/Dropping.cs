using Microsoft.Playwright;

namespace FitCheck.Browser.Page;

/// <summary>A file that is let fall on a page.</summary>
internal static class Dropping
{
    public static Task DropAsync(this IPage page, string name, byte[] bytes) => page.EvaluateAsync("""
        ([name, letters]) => {
          const held = new DataTransfer();
          held.items.add(new File([Uint8Array.from(atob(letters), c => c.charCodeAt(0))], name));
          document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: held, bubbles: true, cancelable: true }));
        }
        """, new[] { name, Convert.ToBase64String(bytes) });
}
